/* The public face: steps that are done are noted in the work file. */
#include <errno.h>
#include <string.h>

#include "api/desk.h"
#include "base/save.h"
#include "base/text.h"
#include "input/lines.h"

/* The steps that are to be noted, as they stand in the plan. */
struct noting {
    const struct plan *plan;
    const int *steps;
    size_t count;
    const char *words; /* that follow the day, or NULL */
    const char *day;
};

static bool is_named_before(const struct noting *noting, size_t at)
{
    for (size_t i = 0; i < at; i++)
        if (noting->steps[i] == noting->steps[at])
            return true;
    return false;
}

/* The lines that are added, with the line ends of the file. */
static const char *lines_for(struct arena *arena, const struct noting *noting, const char *end)
{
    struct text lines = text_start(arena);
    for (size_t i = 0; i < noting->count; i++) {
        const struct step *step = &noting->plan->steps.items[noting->steps[i]];
        if (step->done || is_named_before(noting, i))
            continue;
        text_add(&lines, "%s = %s%s%s%s", step->name, noting->day,
                 noting->words != NULL ? ", " : "", noting->words != NULL ? noting->words : "",
                 end);
    }
    return lines.items;
}

/* Where the line after a line of that number begins; the file's end when there is none. */
static size_t behind_line(const struct source *source, int line)
{
    size_t at = 0;
    for (int i = 0; i < line && at < source->count; i++) {
        const char *end = memchr(source->bytes + at, '\n', source->count - at);
        at = end != NULL ? (size_t)(end - source->bytes) + 1 : source->count;
    }
    return at;
}

/* The file with the lines put in behind its last note, or under a header of their own at its end.
 */
static const char *with_lines(struct arena *arena, const struct source *source, int notes_end,
                              const struct noting *noting)
{
    const char *end = memchr(source->bytes, '\r', source->count) != NULL ? "\r\n" : "\n";
    size_t at = notes_end > 0 ? behind_line(source, notes_end) : source->count;
    struct text whole = text_start(arena);
    text_add_bytes(&whole, source->bytes, at);
    if (at > 0 && source->bytes[at - 1] != '\n')
        text_add(&whole, "%s", end);
    if (notes_end == 0)
        text_add(&whole, "%s[done]%s", end, end);
    text_add(&whole, "%s", lines_for(arena, noting, end));
    text_add_bytes(&whole, source->bytes + at, source->count - at);
    return whole.items;
}

static const struct work *work_called(const struct system *car, const char *path)
{
    for (int i = 0; i < car->work_count; i++)
        if (car->works[i].file != NULL && strcmp(car->works[i].file, path) == 0)
            return &car->works[i];
    return NULL;
}

/* The steps that words name; false, with the reason as the answer. */
static bool find_steps(struct fp_desk *desk, const struct plan *plan, const char *const *words,
                       size_t count, int *steps, const char **answer)
{
    for (size_t i = 0; i < count; i++) {
        steps[i] = plan_step_named(plan, words[i]);
        if (steps[i] >= 0)
            continue;
        const char **names = ARENA_ARRAY(desk->arena, plan->steps.count + 1, const char *);
        for (size_t k = 0; k < plan->steps.count; k++)
            names[k] = plan->steps.items[k].name;
        const char *nearest = text_nearest(words[i], names, plan->steps.count);
        for (size_t k = 0; nearest == NULL && k < plan->steps.count; k++)
            nearest = text_begins(names[k], words[i]) ? names[k] : NULL;
        *answer = text_print(desk->arena,
                             "firmpedal: nothing is noted: the plan has %zu steps, and none is "
                             "called %s%s%s\n",
                             plan->steps.count, words[i], nearest != NULL ? "; nearest: " : "",
                             nearest != NULL ? nearest : "");
        return false;
    }
    return true;
}

/* Whether the lines can be read back. */
static bool lines_fit(struct fp_desk *desk, const struct noting *noting, const char **answer)
{
    const char *words = noting->words;
    if (words != NULL && (*words == '\0' || strpbrk(words, "\n\r;#\"") != NULL)) {
        *answer = "firmpedal: --noted takes words on one line, without ; # and quotes\n";
        return false;
    }
    for (size_t i = 0; i < noting->count; i++)
        if (strlen(noting->plan->steps.items[noting->steps[i]].name) +
                (words != NULL ? strlen(words) : 0) + strlen(noting->day) + 5 >
            LINE_MOST) {
            *answer = text_print(desk->arena,
                                 "firmpedal: --noted is too long: a line of a work file holds %d "
                                 "bytes\n",
                                 LINE_MOST);
            return false;
        }
    return true;
}

/* What comes before a step by its needs, and is not noted: how often that happens is told, and
 * the first of it. */
static void tell_what_is_missing(struct text *words, const struct plan *plan, int at)
{
    const char *first = NULL;
    int missing = 0;
    for (int i = 0; i < at; i++) {
        const struct step *before = &plan->steps.items[i];
        if (before->done || !step_waits_for(&plan->steps.items[at], before))
            continue;
        first = first == NULL ? before->name : first;
        missing++;
    }
    if (missing == 1)
        text_add(words, "  before it comes %s, which is not noted\n", first);
    else if (missing > 1)
        text_add(words, "  before it come %d steps that are not noted, first %s\n", missing, first);
}

static void tell(struct text *words, const struct noting *noting)
{
    const struct plan *plan = noting->plan;
    size_t done = 0;
    for (size_t i = 0; i < noting->count; i++) {
        struct step *step = &plan->steps.items[noting->steps[i]];
        text_add(words, "%s%s\n", step->done ? "noted already: " : "noted: ", step->name);
        step->done = true;
    }
    for (size_t i = 0; i < noting->count; i++)
        tell_what_is_missing(words, plan, noting->steps[i]);
    for (size_t i = 0; i < plan->steps.count; i++)
        done += plan->steps.items[i].done;
    text_add(words, "%zu of %zu steps are done\n", done, plan->steps.count);
    int next = plan_next(plan);
    if (next >= 0)
        text_add(words, "next: %d, %s\n", next + 1, plan->steps.items[next].name);
    for (int i = 0; i < plan->stray_count; i++)
        text_add(words, "%s:%d: %s is no step of this plan\n", plan->strays[i].place.file,
                 plan->strays[i].place.line, plan->strays[i].name);
}

static enum fp_outcome write_notes(struct fp_desk *desk, const struct work *work,
                                   const struct noting *noting, const char **answer)
{
    struct source source;
    if (*lines_for(desk->arena, noting, "\n") == '\0')
        return FP_FINE;
    if (!source_load(work->file, desk->arena, &desk->messages, &source))
        return FP_INPUT;
    const char *whole = with_lines(desk->arena, &source, work->notes_end, noting);
    const struct save_rules rules = {
        .replace = true, .was = source.bytes, .was_count = source.count};
    enum save_outcome saved = save_file(work->file, whole, strlen(whole), &rules);
    if (saved == SAVE_DONE)
        return FP_FINE;
    *answer = text_print(desk->arena, "firmpedal: nothing is noted: %s %s\n", work->file,
                         saved == SAVE_CHANGED ? "was changed meanwhile" : strerror(errno));
    return FP_OUTPUT;
}

enum fp_outcome fp_note(struct fp_desk *desk, const char *work, const char *const *steps,
                        size_t count, const struct fp_wishes *wishes, const char **answer)
{
    ON_NO_MEMORY(desk, FP_OUTPUT);
    *answer = "";
    if (desk->car == NULL)
        return FP_INPUT;
    const struct work *into = work_called(desk->car, work);
    if (into == NULL || !work_is_at_hand(desk->car, into->date)) {
        *answer = text_print(desk->arena,
                             into == NULL ? "firmpedal: %s is not among the work files\n"
                                          : "firmpedal: %s is of an earlier day: note it in the "
                                            "work at hand\n",
                             work);
        return FP_WRONG_USE;
    }
    struct result *result = desk_result(desk, wishes, RESULT_PLAN, answer);
    int *found = ARENA_ARRAY(desk->arena, count + 1, int);
    if (result == NULL || !find_steps(desk, result->plan, steps, count, found, answer))
        return FP_WRONG_USE;
    struct noting noting = {result->plan, found, count, wishes->noted, wishes->date};
    if (!lines_fit(desk, &noting, answer))
        return FP_WRONG_USE;
    enum fp_outcome outcome = write_notes(desk, into, &noting, answer);
    if (outcome != FP_FINE)
        return outcome;
    struct text words = text_start(desk->arena);
    tell(&words, &noting);
    *answer = words.items;
    return FP_FINE;
}
