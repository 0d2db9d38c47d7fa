/* The public face: a description made by being asked. */
#include <errno.h>
#include <string.h>
#include <unistd.h>

#include "api/desk.h"
#include "base/list.h"
#include "base/save.h"
#include "base/text.h"
#include "input/source.h"
#include "report/text/text_report.h"

/* Takes up a description that is there. */
static enum fp_outcome take_up(struct fp_desk *desk)
{
    struct describing *describing = &desk->describing;
    struct source source;
    if (!source_load(describing->path, desk->arena, &desk->messages, &source))
        return FP_INPUT;
    describing->was = text_copy_part(desk->arena, source.bytes, source.count);
    struct messages said = messages_start(desk->arena);
    describing->asking = asking_take_up(describing->was, desk->screen.width, desk->arena, &said);
    for (size_t i = 0; i < said.count; i++) {
        *LIST_ADD(desk->arena, &desk->messages) = said.items[i];
        desk->messages.items[desk->messages.count - 1].place.file = source.name;
    }
    return describing->asking != NULL ? FP_FINE : FP_INPUT;
}

enum fp_outcome fp_describe(struct fp_desk *desk, const char *path, const char *words,
                            const struct fp_wishes *wishes, const char **answer)
{
    ON_NO_MEMORY(desk, FP_OUTPUT);
    *answer = "";
    desk->describing = (struct describing){.path = text_copy(desk->arena, path), .wishes = *wishes};
    bool is_there = access(path, F_OK) == 0;
    if (is_there && *words == '\0')
        return take_up(desk);
    if (is_there) {
        *answer = desk_held(
            desk, text_print(desk->arena,
                             "firmpedal: %s is there already. Without words for a kind of car it "
                             "is gone on with; a new one needs another name.\n",
                             path));
        return FP_WRONG_USE;
    }
    picks said = 0;
    struct text trouble = text_start(desk->arena);
    if (!picks_read(&trouble, words, &said)) {
        *answer = desk_held(desk, trouble.items);
        return FP_WRONG_USE;
    }
    desk->describing.asking = asking_start(said, desk->screen.width, desk->arena);
    return FP_FINE;
}

/* The car as it is so far, worked out; NULL as long as there is none. */
static struct result *result_so_far(struct fp_desk *desk, unsigned parts)
{
    const char *trouble = "";
    struct messages unread = messages_start(desk->arena);
    desk->car = asking_system(desk->describing.asking);
    if (desk->car == NULL)
        return NULL;
    desk->network = network_build(desk->car, desk->arena, &unread);
    return desk_result(desk, &desk->describing.wishes, parts, &trouble);
}

/* What a figure needs that is not measured as such: said, or found from what is. */
static void add_needs(struct fp_desk *desk, struct tellings *tellings, const struct figure *figure)
{
    for (int i = 0; i < figure->needs_count; i++) {
        const struct cited_key *need = &figure->needs[i];
        double tells = 1.0 / figure->needs_count;
        if (need->key->measured)
            continue;
        *LIST_ADD(desk->arena, tellings) = (struct telling){need->key, need->part, tells};
        *LIST_ADD(desk->arena, tellings) = (struct telling){NULL, need->part, tells};
    }
}

static void take_order(struct fp_desk *desk, const struct result *result)
{
    struct tellings tellings = {0};
    for (int i = 0; i < result->figures.count; i++)
        add_needs(desk, &tellings, &result->figures.items[i]);
    for (int i = 0; i < result->measure.count; i++) {
        const struct measuring *thing = &result->measure.items[i];
        for (int k = 0; k < thing->part_count; k++)
            *LIST_ADD(desk->arena, &tellings) =
                (struct telling){thing->key, thing->parts[k], thing->tells};
    }
    asking_take_tellings(desk->describing.asking, &tellings);
}

/* What tells most is known as soon as there is a car. */
static void order_once(struct fp_desk *desk)
{
    if (desk->describing.is_ordered)
        return;
    const struct result *result = result_so_far(desk, RESULT_FIGURES);
    if (result != NULL)
        take_order(desk, result);
    desk->describing.is_ordered = result != NULL;
}

enum fp_outcome fp_describe_question(struct fp_desk *desk, const char **question)
{
    ON_NO_MEMORY(desk, FP_OUTPUT);
    struct text words = text_start(desk->arena);
    order_once(desk);
    asking_question(desk->describing.asking, &words);
    *question = words.items;
    return FP_FINE;
}

static void show(struct fp_desk *desk, struct text *into)
{
    const struct result *result = result_so_far(desk, RESULT_FIGURES | RESULT_JUDGED);
    if (result == NULL) {
        text_add(into, "It is not said yet what kind of car it is.\n");
        return;
    }
    text_add(into, "\nWhat the car shows so far:\n%s", desk_check(desk, result));
    take_order(desk, result);
}

static void tell_unwritten(const struct fp_desk *desk, enum save_outcome saved, const char *path,
                           struct text *into)
{
    const char *why =
        saved == SAVE_EXISTS || saved == SAVE_IS_AN_INPUT ? "is there already and was left as it is"
        : saved == SAVE_CHANGED ? "was changed by someone else meanwhile and was left as it is"
                                : strerror(errno);
    text_add_wrapped(into,
                     text_print(into->arena,
                                "Nothing is written: %s %s. leave OTHER-NAME writes another file.",
                                path, why),
                     0, 0, desk->screen.width);
}

static size_t left_lines(const char *text)
{
    size_t count = 0;
    for (const char *at = text; (at = strstr(at, "= ?")) != NULL; at++)
        count++;
    return count;
}

static enum fp_describing write_it(struct fp_desk *desk, const char *other, struct text *into)
{
    struct describing *describing = &desk->describing;
    const char *text = asking_text(describing->asking);
    const char *path = other != NULL ? other : describing->path;
    const char *was = other == NULL ? describing->was : NULL;
    if (text == NULL) {
        const char *kind = asking_kind(describing->asking);
        text_add_wrapped(into,
                         text_print(into->arena,
                                    "Nothing is written: it is not said to its end what kind of "
                                    "car it is. To go on: firmpedal describe %s %s",
                                    path, kind),
                         0, 2, desk->screen.width);
        return FP_DROPPED;
    }
    struct save_rules rules = {.replace = was != NULL, .was = was};
    rules.was_count = was != NULL ? strlen(was) : 0;
    enum save_outcome saved = save_file(path, text, strlen(text), &rules);
    if (saved != SAVE_DONE) {
        tell_unwritten(desk, saved, path, into);
        return FP_UNWRITTEN;
    }
    text_add_wrapped(into,
                     text_print(into->arena, "%s is written. Left for later, marked ?: %zu.", path,
                                left_lines(text)),
                     0, 2, desk->screen.width);
    text_add_wrapped(into, text_print(into->arena, "To go on: firmpedal describe %s", path), 0, 2,
                     desk->screen.width);
    text_add_wrapped(into, text_print(into->arena, "To see it: firmpedal check %s", path), 0, 2,
                     desk->screen.width);
    return FP_WRITTEN;
}

enum fp_describing fp_describe_answer(struct fp_desk *desk, const char *line, const char **reply)
{
    *reply = "firmpedal: no memory\n";
    ON_NO_MEMORY(desk, FP_UNWRITTEN);
    struct text words = text_start(desk->arena);
    struct messages messages = messages_start(desk->arena);
    const char *name = NULL;
    enum fp_describing turn = FP_ASKS_ON;
    struct text said = text_start(desk->arena);
    enum asking_turn answered =
        asking_answer(desk->describing.asking, line, &said, &messages, &name);
    struct messages shown = messages_shown(&messages);
    text_messages(&words, &shown, desk->screen.width);
    text_add(&words, "%s", said.items);
    if (answered == ASKING_SHOWS)
        show(desk, &words);
    else if (answered == ASKING_LEAVES)
        turn = write_it(desk, name, &words);
    else if (answered == ASKING_DROPS)
        turn = FP_DROPPED;
    if (answered == ASKING_DROPS)
        text_add(&words, "Nothing is written.\n");
    *reply = desk_held(desk, words.items);
    return turn;
}

const char *fp_description(struct fp_desk *desk)
{
    ON_NO_MEMORY(desk, NULL);
    return desk->describing.asking != NULL ? asking_text(desk->describing.asking) : NULL;
}
