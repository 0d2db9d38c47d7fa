#include "starters/picks.h"

#include <string.h>

#include "support/cmocka_all.h"

static picks said(const char *words)
{
    struct arena *arena = arena_create();
    struct text trouble = text_start(arena);
    picks set = 0;
    if (!picks_read(&trouble, words, &set))
        fail_msg("%s: %s", words, trouble.items);
    arena_destroy(arena);
    return set;
}

static void refused(const char *words, const char *because)
{
    struct arena *arena = arena_create();
    struct text trouble = text_start(arena);
    picks set = 0;
    if (picks_read(&trouble, words, &set))
        fail_msg("%s was taken", words);
    if (strstr(trouble.items, because) == NULL)
        fail_msg("%s: %s", words, trouble.items);
    arena_destroy(arena);
}

static void words_are_taken_in_any_order(void **state)
{
    (void)state;
    picks one = said("front discs, rear drums, remote servo, hydraulic clutch with its own "
                     "reservoir, right");
    assert_int_equal(one,
                     P(FRONT_FIXED) | P(REAR_DRUMS) | P(SERVO_LINE) | P(CLUTCH_OWN) | P(RIGHT));
    assert_int_equal(said("right, hydraulic clutch with its own reservoir, rear drums, "
                          "remote servo and front discs"),
                     one);
    assert_int_equal(said("Right Remote-Servo rear drums  with front discs hydraulic clutch with "
                          "its own reservoir"),
                     one);
    assert_int_equal(said("hydraulic clutch, right"), P(CLUTCH_SHARED) | P(RIGHT));
}

/* Every word, and every other word for it, means it; a set keeps its name. */
static void every_word_says_itself(void **state)
{
    (void)state;
    const struct pick_row *rows = pick_rows();
    for (int i = 0; i < PICK_COUNT; i++) {
        assert_true((said(rows[i].word) & (picks)1 << i) != 0);
        char others[200];
        strcpy(others, rows[i].others != NULL ? rows[i].others : "");
        for (char *other = strtok(others, ","); other != NULL; other = strtok(NULL, ","))
            assert_int_equal(said(other), (picks)1 << i);
    }
    size_t count;
    const struct usual_set *sets = usual_sets(&count);
    for (size_t i = 0; i < count; i++)
        assert_int_equal(picks_with_usual(said(sets[i].word)),
                         picks_with_usual(sets[i].named | sets[i].usual));
}

static void a_word_wins_over_what_is_usual_with_a_name(void **state)
{
    (void)state;
    picks set = picks_with_usual(said("drums, two circuits, remote servo, independent rear"));
    assert_true((set & P(FRONT_DRUMS)) != 0 && (set & P(TWO_CIRCUITS)) != 0);
    assert_true((set & P(SERVO_LINE)) != 0 && (set & P(REAR_FREE)) != 0);
    assert_true((set & (P(ONE_CIRCUIT) | P(SERVO_NONE) | P(REAR_LIVE))) == 0);
}

static void what_does_not_go_together_is_said(void **state)
{
    (void)state;
    refused("front discs, front drums", "These do not go together: front discs, front drums.");
    refused("drums, front sliding discs", "front sliding discs, front drums");
    refused("left right", "left, right");
    refused("twin masters, direct servo", "a direct servo pushes one master");
    refused("diagonal, one circuit", "one circuit, diagonal split");
    refused("diagonal, remote servo", "change the runs");
    refused("one circuit, two remote servos", "one circuit has one servo");
    refused("motorcycle, rear drums", "hydraulic drums on a motorcycle");
    refused("motorcycle, right", "said of a car");
    refused("car, single front disc", "said of a motorcycle");
    refused("single front disc, hand brake", "said of a car");
    refused("clutch by cable, concentric slave", "only a hydraulic clutch");
    refused("drums, diagonal", "do not go together");
}

static void a_word_that_is_none_is_named_with_the_nearest(void **state)
{
    (void)state;
    refused("drums, remote sevro", "remote sevro. Nearest: remote servo.");
    refused("digonal", "Nearest: diagonal");
    refused("steam", "steam");
}

/* What is usual goes together, whatever is said. */
static void what_is_usual_goes_with_any_two_words(void **state)
{
    (void)state;
    struct arena *arena = arena_create();
    const struct pick_row *rows = pick_rows();
    int pairs = 0;
    for (int one = 0; one < PICK_COUNT; one++)
        for (int two = 0; two < PICK_COUNT; two++) {
            struct text trouble = text_start(arena);
            picks set = 0, again = 0;
            const char *words = text_print(arena, "%s, %s", rows[one].word, rows[two].word);
            if (!picks_read(&trouble, words, &set))
                continue;
            picks all = picks_with_usual(set);
            if (!picks_read(&trouble, picks_words(arena, all), &again))
                fail_msg("%s: %s", words, trouble.items);
            assert_int_equal(again, all);
            pairs++;
        }
    assert_true(pairs > 1000);
    arena_destroy(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(words_are_taken_in_any_order),
        cmocka_unit_test(every_word_says_itself),
        cmocka_unit_test(a_word_wins_over_what_is_usual_with_a_name),
        cmocka_unit_test(what_does_not_go_together_is_said),
        cmocka_unit_test(a_word_that_is_none_is_named_with_the_nearest),
        cmocka_unit_test(what_is_usual_goes_with_any_two_words),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
