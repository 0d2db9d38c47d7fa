/* The public face: what is printed from the tables, without a car. */
#include <string.h>

#include "base/text.h"
#include "api/desk.h"
#include "manual/explain.h"
#include "manual/measuring_sheet.h"
#include "manual/page.h"
#include "manual/template.h"
#include "manual/findings_page.h"

/* Puts the car together that the words say; false with what can be said where they say none. */
static bool find_car(struct text *words, const char *asked, struct starter *into)
{
    picks said = 0;
    bool read = picks_read(words, asked, &said);
    if (read && *asked != '\0')
        *into = starter_of(said, words->arena);
    else
        picks_list(words);
    return read && *asked != '\0';
}

enum fp_outcome fp_starter(struct fp_desk *desk, const char *car, const char **answer)
{
    ON_NO_MEMORY(desk, FP_OUTPUT);
    struct text words = text_start(desk->arena);
    struct starter starter;
    bool found = find_car(&words, car, &starter);
    if (found)
        template_start(&words, &starter);
    *answer = words.items;
    return found || *car == '\0' ? FP_FINE : FP_WRONG_USE;
}

enum fp_outcome fp_measuring_sheet(struct fp_desk *desk, const char *car, const char **answer)
{
    ON_NO_MEMORY(desk, FP_OUTPUT);
    struct text words = text_start(desk->arena);
    struct starter starter;
    bool found = find_car(&words, car, &starter);
    if (found)
        measuring_sheet(&words, &starter);
    *answer = words.items;
    return found || *car == '\0' ? FP_FINE : FP_WRONG_USE;
}

enum fp_outcome fp_explain(struct fp_desk *desk, const char *word, const char **answer)
{
    ON_NO_MEMORY(desk, FP_OUTPUT);
    struct text words = text_start(desk->arena);
    bool row = findings_explain(&words, word);
    bool key = explain_word(&words, word);
    if (!row && !key) {
        size_t count;
        const char *const *ids = findings_ids(desk->arena, &count);
        const char *id = text_nearest(word, ids, count);
        const char *keys = explain_near(desk->arena, word);
        text_add(&words, "Nothing here is called %s.", word);
        if (id != NULL || *keys != '\0')
            text_add(&words, " Nearest: %s%s%s.", id != NULL ? id : "",
                     id != NULL && *keys != '\0' ? ", " : "", keys);
        text_add(&words, " docs/input.md lists the keys, docs/findings.md the rest.\n");
    }
    *answer = desk_held(desk, words.items);
    return row || key ? FP_FINE : FP_WRONG_USE;
}

enum fp_outcome fp_page(struct fp_desk *desk, const char *page, const char **answer)
{
    ON_NO_MEMORY(desk, FP_OUTPUT);
    struct text words = text_start(desk->arena);
    bool known = true;
    if (strcmp(page, "input") == 0)
        page_input(&words);
    else if (strcmp(page, "findings") == 0)
        findings_page(&words);
    else {
        text_add(&words, "There are two pages: input and findings.\n");
        known = false;
    }
    *answer = words.items;
    return known ? FP_FINE : FP_WRONG_USE;
}
