#include "advice/checks/finding.h"

#include <string.h>

#include "advice/checks/checks.h"
#include "advice/figures/to_measure.h"
#include "base/text.h"

static int compare_places(const struct place *a, const struct place *b)
{
    if (a->file != NULL && b->file != NULL && strcmp(a->file, b->file) != 0) {
        return strcmp(a->file, b->file);
    }
    return a->line != b->line ? (a->line < b->line ? -1 : 1) : 0;
}

/* Serious, advice, note. */
static int tier(const struct finding *finding)
{
    return finding->severity >= SEVERITY_WARNING ? 0 : finding->severity == SEVERITY_ADVICE ? 1 : 2;
}

static int compare_findings(const struct finding *a, const struct finding *b)
{
    if (tier(a) != tier(b)) {
        return tier(a) - tier(b);
    }
    if ((a->guess != NULL) != (b->guess != NULL)) {
        return a->guess != NULL ? 1 : -1;
    }
    if (a->severity != b->severity) {
        return a->severity > b->severity ? -1 : 1;
    }
    int by_place = compare_places(&a->place, &b->place);
    if (by_place != 0) {
        return by_place;
    }
    return a->check != b->check ? (a->check < b->check ? -1 : 1) : 0;
}

static void sort_findings(struct findings *findings)
{
    for (size_t i = 1; i < findings->count; i++) {
        struct finding moving = findings->items[i];
        size_t at = i;
        while (at > 0 && compare_findings(&moving, &findings->items[at - 1]) < 0) {
            findings->items[at] = findings->items[at - 1];
            at--;
        }
        findings->items[at] = moving;
    }
}

struct findings unsettled_of(const struct system *system, const struct network *network,
                             struct arena *arena)
{
    static const char *const ids[] = {"fluid-wrong-found", "leak-weeping",   "pistons-stuck",
                                      "bore-pitted",       "caliper-pitted", "nipple-sheared",
                                      "nipple-seized"};
    struct findings findings = {.arena = arena};
    struct checking checking = {
        .system = system, .network = network, .findings = &findings, .arena = arena};
    for (size_t i = 0; i < sizeof ids / sizeof *ids; i++) {
        const struct check_row *row = check_row(ids[i]);
        row->test(&checking, row);
    }
    sort_findings(&findings);
    return findings;
}

struct findings findings_of(const struct system *system, const struct network *network,
                            const struct figures *figures, struct date today, struct arena *arena)
{
    struct findings findings = {.arena = arena};
    struct checking checking = {
        .system = system,
        .network = network,
        .figures = figures,
        .hoses = hoses_of(system, network, today, arena),
        .rulings = rules_measure(system, network, figures, arena),
        .readings = readings_compare(system, network, figures, arena),
        .today = today,
        .findings = &findings,
        .arena = arena,
    };
    size_t count;
    const struct check_row *rows = check_rows(&count);
    for (size_t i = 0; i < count; i++) {
        rows[i].test(&checking, &rows[i]);
    }
    for (size_t i = 0; i < findings.count; i++) {
        const struct figure *guess = findings.items[i].guess;
        const struct cited_key *first = guess == NULL ? NULL : figure_first_to_measure(guess);
        if (first != NULL)
            findings.items[i].measure = cited_thing_words(arena, system, first);
    }
    sort_findings(&findings);
    return findings;
}
