/* The public face: what is printed from the tables, without a car. */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "api/desk.h"
#include "manual/explain.h"
#include "manual/measuring_sheet.h"
#include "manual/page.h"
#include "manual/template.h"
#include "manual/findings_page.h"

/* "drums", "drums right": a layout and perhaps the driver's side. NULL names those there are. */
static const struct car_layout *find_layout(struct text *words, const char *asked,
                                            enum driver_side *driver)
{
    char name[64];
    size_t length = strlen(asked);
    *driver = DRIVER_LEFT;
    if (text_ends(asked, " right"))
        *driver = DRIVER_RIGHT;
    if (text_ends(asked, " right") || text_ends(asked, " left"))
        length = (size_t)(strrchr(asked, ' ') - asked);
    snprintf(name, sizeof name, "%.*s", (int)length, asked);
    const struct car_layout *layout = layout_find(name);
    if (layout != NULL)
        return layout;
    if (*asked != '\0') {
        const char *nearest = layout_nearest(words->arena, name);
        text_add(words, "There is no layout %s.", asked);
        if (nearest != NULL)
            text_add(words, " Nearest: %s.", nearest);
        text_add(words, "\n");
    }
    size_t count;
    const struct car_layout *rows = layout_rows(&count);
    text_add(words, "Layouts, with left or right behind for the driver's side:\n");
    for (size_t i = 0; i < count; i++)
        text_add(words, "  %-14s %s\n", rows[i].word, rows[i].help);
    return NULL;
}

enum fp_outcome fp_starter(struct fp_desk *desk, const char *layout, const char **answer)
{
    ON_NO_MEMORY(desk, FP_OUTPUT);
    struct text words = text_start(desk->arena);
    enum driver_side driver;
    const struct car_layout *found = find_layout(&words, layout, &driver);
    if (found != NULL)
        template_start(&words, found, driver);
    *answer = words.items;
    return found != NULL || *layout == '\0' ? FP_FINE : FP_WRONG_USE;
}

enum fp_outcome fp_measuring_sheet(struct fp_desk *desk, const char *layout, const char **answer)
{
    ON_NO_MEMORY(desk, FP_OUTPUT);
    struct text words = text_start(desk->arena);
    enum driver_side driver;
    const struct car_layout *found = find_layout(&words, layout, &driver);
    if (found != NULL)
        measuring_sheet(&words, found);
    *answer = words.items;
    return found != NULL || *layout == '\0' ? FP_FINE : FP_WRONG_USE;
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
