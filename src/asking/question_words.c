#include "asking/question_words.h"

#include <stdlib.h>
#include <string.h>

#include "input/key_words.h"
#include "input/schema.h"
#include "parts/words.h"
#include "units/unit.h"

enum { HANG = 3 };

void add_hung(struct text *into, const char *mark, const char *words, int width)
{
    text_add(into, "%-*s", HANG, mark);
    text_add_wrapped(into, words, HANG, HANG, width);
}

static const char *heading(struct arena *arena, const struct question *question)
{
    if (question->blank.piece == NULL)
        return text_print(arena, "[%s] %s", question->blank.header, question->blank.key->name);
    const char *kind = question->blank.kind == KIND_PIPE ? "pipe" : "hose";
    if (*question->to == '\0')
        return text_print(arena, "[runs] %s: length of the %s behind %s", question->run, kind,
                          question->from);
    return text_print(arena, "[runs] %s: length of the %s from %s to %s", question->run, kind,
                      question->from, question->to);
}

/* The parts that a key may name. */
static const char *nameable(struct arena *arena, const struct rough *rough,
                            const struct question *question)
{
    struct text names = text_start(arena);
    unsigned kinds = key_names_kinds(question->blank.kind, question->blank.key);
    for (int i = 0; i < rough->system->part_count; i++)
        if ((kinds & 1u << rough->system->parts[i].kind) != 0)
            text_add(&names, "%s%s", names.count > 0 ? ", " : "", rough->system->parts[i].name);
    return names.items;
}

static void add_choices(struct text *into, const struct key *key, int width)
{
    int nth = 0;
    for (const struct choice *choice = key->choices; choice->word != NULL; choice++)
        add_hung(into, text_print(into->arena, "%d", ++nth),
                 text_print(into->arena, "%s: %s", choice->word, choice->help), width);
}

/* What stands in the description when the answer is empty. */
static const char *unanswered(struct arena *arena, const struct question *question)
{
    const char *unsaid = key_unsaid_words(arena, question->blank.key);
    if (question->guess != NULL)
        return text_print(arena, "Enter: %s", question->guess);
    if (*unsaid != '\0' && !question->blank.key->required)
        return text_print(arena, "Enter takes: %s", unsaid);
    return question->stage == STAGE_NEEDED ? "Enter leaves it for later" : "";
}

void question_words(struct text *into, const struct rough *rough, const struct question *question,
                    size_t to_go, bool again, int width)
{
    struct arena *arena = into->arena;
    const struct key *key = question->blank.key;
    const char *usual = key_usual_words(arena, key);
    text_add_wrapped(into, text_print(arena, "%s (%zu to go)", heading(arena, question), to_go), 0,
                     2, width);
    if (again)
        return;
    add_hung(into, "", key->help, width);
    if (key->form == FORM_CHOICE)
        add_choices(into, key, width);
    else
        add_hung(
            into, "",
            text_print(arena, "as: %s%s%s", key->example, *usual != '\0' ? "; usual: " : "", usual),
            width);
    if (key->form == FORM_PART || key->form == FORM_PARTS)
        add_hung(into, "", text_print(arena, "there are: %s", nameable(arena, rough, question)),
                 width);
    const char *empty = unanswered(arena, question);
    if (*empty != '\0')
        add_hung(into, "", empty, width);
}

/* A line "label: words"; nothing where there are no words. */
static void add_about(struct text *into, const char *label, const char *words, int width)
{
    if (words != NULL && *words != '\0')
        text_add_wrapped(into, text_print(into->arena, "%s: %s", label, words), 0, HANG, width);
}

void question_explain(struct text *into, const struct rough *rough, const struct question *question,
                      int width)
{
    struct arena *arena = into->arena;
    const struct key *key = question->blank.key;
    add_about(into, key->name, key->help, width);
    add_about(into, "written", text_print(arena, "%s = %s", key->name, key->example), width);
    if (key->form == FORM_QUANTITY || key->form == FORM_BORES)
        add_about(into, "units", dimension_units(arena, key->dimension), width);
    if (key->form == FORM_PART || key->form == FORM_PARTS)
        add_about(into, "there are", nameable(arena, rough, question), width);
    add_about(into, "possible", key_limit_words(arena, key), width);
    add_about(into, "usual", key_usual_words(arena, key), width);
    add_about(into, "taken when not said", key_unsaid_words(arena, key), width);
    for (const struct choice *choice = key->choices; choice != NULL && choice->word; choice++)
        if (choice->others != NULL)
            add_about(into, choice->word, text_print(arena, "or %s", choice->others), width);
    add_about(into, "called too", key->others, width);
    add_about(into, "more", text_print(arena, "firmpedal explain \"%s\"", key->name), width);
}

const char *question_value(const struct question *question, const char *answer, struct arena *arena)
{
    const struct key *key = question->blank.key;
    size_t digits = strspn(answer, "0123456789");
    if (key->form != FORM_CHOICE || digits == 0 || answer[digits] != '\0' || digits > 3)
        return text_copy(arena, answer);
    long number = strtol(answer, NULL, 10);
    const struct choice *choice = key->choices;
    while (choice->word != NULL && --number > 0)
        choice++;
    return choice->word != NULL && number == 0 ? choice->word : text_copy(arena, answer);
}
