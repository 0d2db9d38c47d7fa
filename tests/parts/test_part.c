#include "parts/part.h"

#include "parts/keys/key.h"
#include "parts/words.h"
#include "support/cmocka_all.h"

static void headers_name_their_kind_by_last_or_first_words(void **state)
{
    (void)state;
    static const struct {
        const char *header;
        enum part_kind kind;
    } rows[] = {
        {"rear left drum", KIND_DRUM},
        {"drum rear left", KIND_DRUM},
        {"Rear Drum", KIND_DRUM},
        {"hand brake", KIND_PARKING},
        {"handbrake", KIND_PARKING},
        {"parking brake", KIND_PARKING},
        {"hand brake lever", KIND_PARKING},
        {"brake booster", KIND_SERVO},
        {"clutch booster", KIND_SERVO},
        {"load valve", KIND_VALVE},
        {"axle tee", KIND_JOINT},
        {"warning shuttle", KIND_VALVE},
        {"brake lever", KIND_PEDAL},
        {"hand lever", KIND_PEDAL},
        {"clutch master cylinder", KIND_MASTER},
        {"front feed line", KIND_PIPE},
        {"clutch line hose", KIND_HOSE},
        {"front calliper", KIND_DISC},
        {"vehicle", KIND_VEHICLE},
        {"fluid", KIND_FLUID},
        {"brake fluid", KIND_FLUID},
        {"disc brake front", KIND_DISC},
        {"clutch slave", KIND_SLAVE},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        enum part_kind kind = KIND_COUNT;
        bool found = kind_of_words(rows[i].header, &kind);
        if (kind != rows[i].kind || found != (rows[i].kind != KIND_COUNT))
            fail_msg("[%s] is taken for kind %d", rows[i].header, (int)kind);
    }
}

static void part_of_a_word_names_no_kind(void **state)
{
    (void)state;
    enum part_kind kind;
    assert_false(kind_of_words("humdrum", &kind));
    assert_false(kind_of_words("drums", &kind));
    assert_false(kind_of_words("runs", &kind));
    assert_false(kind_of_words("", &kind));
}

static void every_word_for_a_kind_names_one(void **state)
{
    (void)state;
    size_t count;
    const char *const *words = kind_all_words(&count);
    assert_true(count > KIND_COUNT);
    for (size_t i = 0; i < count; i++) {
        enum part_kind kind = KIND_COUNT;
        assert_true(kind_of_words(words[i], &kind));
        if (i < KIND_COUNT)
            assert_int_equal(kind, i);
        for (size_t j = 0; j < i; j++)
            assert_false(words_same(words[i], words[j]));
    }
}

static void every_mount_axle_and_side_has_words(void **state)
{
    (void)state;
    const struct key *on = key_find(KIND_DRUM, "on");
    for (int mount = MOUNT_UNKNOWN; mount < MOUNT_COUNT; mount++) {
        assert_non_null(mount_words((enum mount)mount));
        assert_int_equal(choice_of_value(on, mount) != NULL, mount != MOUNT_UNKNOWN);
    }
    assert_string_equal(side_word(SIDE_LEFT), "left");
    assert_string_equal(side_word(SIDE_NONE), "");
    assert_string_equal(axle_word(AXLE_REAR), "rear");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(headers_name_their_kind_by_last_or_first_words),
        cmocka_unit_test(part_of_a_word_names_no_kind),
        cmocka_unit_test(every_word_for_a_kind_names_one),
        cmocka_unit_test(every_mount_axle_and_side_has_words),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
