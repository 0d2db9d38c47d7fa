#include "asking/asking.h"

#include <string.h>

#include "asking/kind_asked.h"
#include "asking/question_words.h"
#include "base/list.h"
#include "parts/words.h"

/* After so many answers it is said what the car shows; then at the end of each stage. */
enum { FIRST_DOZEN = 12 };

/* What is gone back to. */
struct step_back {
    picks said;
    const char *text; /* NULL: still asking what kind of car it is */
    size_t passed_count;
    enum stage stage;
    size_t answers;
};

struct asking {
    struct arena *arena;
    int width;
    picks said;
    struct starter starter;
    bool has_starter;
    const char *text; /* NULL until the kind of car is said */
    struct rough rough;
    struct questions questions;
    struct tellings tellings;
    struct {
        const char **items;
        size_t count;
        size_t capacity;
    } passed; /* ids of what was answered or passed over in this sitting */
    struct {
        struct step_back *items;
        size_t count;
        size_t capacity;
    } back;
    enum stage stage; /* up to which is asked */
    size_t answers;   /* that went into the description */
    bool has_shown;
    const char *last; /* the question that was put last */
    bool is_greeted;
};

static void list_questions(struct asking *asking)
{
    asking->questions = questions_of(&asking->rough, asking->has_starter ? &asking->starter : NULL,
                                     &asking->tellings, asking->arena);
}

/* Takes a text that is known to read. */
static void take_text(struct asking *asking, const char *text)
{
    asking->text = text;
    rough_read(&asking->rough, text, asking->arena);
    list_questions(asking);
}

/* Once it is said what kind of car it is, there is a description. */
static void begin_text(struct asking *asking)
{
    if (asking->text != NULL || kind_next(asking->said) != GROUP_COUNT)
        return;
    asking->starter = starter_of(asking->said, asking->arena);
    asking->has_starter = true;
    take_text(asking, rough_of_starter(asking->arena, &asking->starter));
}

struct asking *asking_start(picks said, int width, struct arena *arena)
{
    struct asking *asking = ARENA_NEW(arena, struct asking);
    asking->arena = arena;
    asking->width = width;
    asking->said = kind_settled(said);
    begin_text(asking);
    return asking;
}

struct asking *asking_take_up(const char *text, int width, struct arena *arena,
                              struct messages *messages)
{
    struct asking *asking = ARENA_NEW(arena, struct asking);
    asking->arena = arena;
    asking->width = width;
    rough_read(&asking->rough, text, arena);
    if (asking->rough.system == NULL) {
        *messages = asking->rough.messages;
        return NULL;
    }
    take_text(asking, text);
    return asking;
}

static bool is_passed(const struct asking *asking, const char *id)
{
    for (size_t i = 0; i < asking->passed.count; i++)
        if (strcmp(asking->passed.items[i], id) == 0)
            return true;
    return false;
}

/* The question at hand: of the stages so far, or of all; NULL when there is none. */
static const struct question *at_hand(const struct asking *asking, enum stage most)
{
    if (asking->text == NULL)
        return NULL;
    for (size_t i = 0; i < asking->questions.count; i++)
        if (asking->questions.items[i].stage <= most &&
            !is_passed(asking, asking->questions.items[i].id))
            return &asking->questions.items[i];
    return NULL;
}

static size_t still_open(const struct asking *asking, enum stage stage)
{
    size_t count = 0;
    for (size_t i = 0; i < asking->questions.count; i++)
        count += asking->questions.items[i].stage == stage &&
                 !is_passed(asking, asking->questions.items[i].id);
    return count;
}

static const char greeting[] =
    "One thing after the other, each with its unit. Enter: pass it over. ?: later. Also: back, "
    "explain, show, leave (writes the file), drop (writes nothing), help.";

static const char *stage_words(const struct asking *asking)
{
    switch (asking->stage) {
    case STAGE_NEEDED:
        return text_print(asking->arena,
                          "That is what tells most. %zu more can be measured, and tell less. "
                          "Enter: go on; leave: write the file",
                          still_open(asking, STAGE_MEASURED));
    case STAGE_MEASURED:
        return text_print(asking->arena,
                          "That is all that is measured. %zu more can be said, from books or for "
                          "special cases. Enter: go on; leave: write the file",
                          still_open(asking, STAGE_REST));
    case STAGE_REST:
        break;
    }
    return "All is asked. Enter or leave: write the file";
}

void asking_question(struct asking *asking, struct text *into)
{
    if (!asking->is_greeted)
        text_add_wrapped(into, greeting, 0, 0, asking->width);
    asking->is_greeted = true;
    text_add(into, "\n");
    const struct question *question = at_hand(asking, asking->stage);
    const char *before = asking->last;
    asking->last = asking->text == NULL ? group_asked(kind_next(asking->said))
                   : question != NULL   ? question->id
                                        : "";
    bool again = before != NULL && strcmp(before, asking->last) == 0;
    if (asking->text == NULL)
        kind_words(into, kind_next(asking->said), asking->said, again, asking->width);
    else if (question != NULL)
        question_words(into, &asking->rough, question, still_open(asking, question->stage), again,
                       asking->width);
    else
        text_add_wrapped(into, stage_words(asking), 0, 0, asking->width);
}

static struct step_back as_it_is(const struct asking *asking)
{
    return (struct step_back){asking->said, asking->text, asking->passed.count, asking->stage,
                              asking->answers};
}

static void go_back(struct asking *asking, struct text *into)
{
    if (asking->back.count == 0) {
        text_add_wrapped(into, "There is nothing before this.", 0, 0, asking->width);
        return;
    }
    struct step_back step = asking->back.items[--asking->back.count];
    asking->said = step.said;
    asking->passed.count = step.passed_count;
    asking->stage = step.stage;
    asking->answers = step.answers;
    asking->text = NULL;
    if (step.text != NULL)
        take_text(asking, step.text);
    else
        asking->has_starter = false;
}

static void explain(struct asking *asking, struct text *into)
{
    const struct question *question = at_hand(asking, asking->stage);
    if (question != NULL)
        question_explain(into, &asking->rough, question, asking->width);
    else if (asking->text == NULL)
        text_add_wrapped(into,
                         "Say it by its number or in words; several at once too: \"front discs, "
                         "rear drums, direct servo, right\". From it follow the sections and the "
                         "plumbing, which can be changed in the file afterwards.",
                         0, 0, asking->width);
    else
        text_add_wrapped(into, stage_words(asking), 0, 0, asking->width);
}

/* Whether the same was said of the description before. */
static bool was_said(const struct messages *before, const struct message *message)
{
    for (size_t i = 0; i < before->count; i++)
        if (strcmp(before->items[i].id, message->id) == 0 &&
            strcmp(before->items[i].words, message->words) == 0)
            return true;
    return false;
}

/* What is new in the reader's messages, as said of the answer and not of a line. */
static void tell_new(const struct asking *asking, const struct rough *with,
                     struct messages *messages)
{
    for (size_t i = 0; i < with->messages.count; i++) {
        const struct message *said = &with->messages.items[i];
        if (was_said(&asking->rough.messages, said))
            continue;
        struct message *message =
            messages_add(messages, said->severity, said->id,
                         (struct place){"your answer", 0, said->place.column});
        struct place place = message->place;
        *message = *said;
        message->place = place;
        message->earlier = (struct place){0};
    }
}

/* Whether the description holds the value as it was typed: behind ; it would be a comment. */
static bool is_whole(const struct rough *with, const struct question *question, const char *value)
{
    for (size_t s = 0; s < with->lines.count; s++) {
        const struct section *section = &with->lines.items[s];
        if (!words_same(section->name.text, question->blank.header))
            continue;
        for (size_t i = 0; i < section->count; i++)
            if (section->items[i].value.text != NULL &&
                strstr(section->items[i].value.text, value) != NULL)
                return true;
    }
    return false;
}

static bool take_value(struct asking *asking, const struct question *question, const char *answer,
                       struct text *into, struct messages *messages)
{
    const char *value = question_value(question, answer, asking->arena);
    const char *text = rough_with(&asking->rough, &question->blank, value, asking->arena);
    struct rough with;
    rough_read(&with, text, asking->arena);
    tell_new(asking, &with, messages);
    if (with.system == NULL)
        return false;
    if (!is_whole(&with, question, value)) {
        text_add_wrapped(into, "A ; begins a comment in a description: say it without.", 0, 0,
                         asking->width);
        return false;
    }
    if (messages->count > 0)
        text_add_wrapped(into, "It is written so; back changes it.", 0, 0, asking->width);
    asking->text = text;
    asking->rough = with;
    return true;
}

static void pass(struct asking *asking, const struct question *question)
{
    const char *id = question->id;
    *LIST_ADD(asking->arena, &asking->passed) = id;
    list_questions(asking);
}

/* An answer to the question at hand; whether it is time to show. */
static bool answer_question(struct asking *asking, const struct question *question,
                            const char *answer, struct text *into, struct messages *messages)
{
    bool skipped = *answer == '\0' || (strcmp(answer, "?") == 0 && question->blank.entry != NULL &&
                                       question->guess == NULL);
    struct step_back step = as_it_is(asking);
    if (!skipped && !take_value(asking, question, answer, into, messages))
        return false;
    *LIST_ADD(asking->arena, &asking->back) = step;
    asking->answers += !skipped && strcmp(answer, "?") != 0;
    pass(asking, question);
    bool due = !asking->has_shown && asking->answers >= FIRST_DOZEN;
    asking->has_shown = asking->has_shown || due;
    return due;
}

/* All of the stages so far is asked; whether the description is to be written. */
static bool end_stage(struct asking *asking)
{
    if (asking->stage == STAGE_REST)
        return true;
    *LIST_ADD(asking->arena, &asking->back) = as_it_is(asking);
    asking->stage = (enum stage)(asking->stage + 1);
    return false;
}

static void answer_kind(struct asking *asking, const char *answer, struct text *into)
{
    picks said = asking->said;
    if (strcmp(answer, "?") == 0)
        answer = "";
    if (!kind_take(into, kind_next(asking->said), answer, &said))
        return;
    *LIST_ADD(asking->arena, &asking->back) = as_it_is(asking);
    asking->said = said;
    begin_text(asking);
}

/* Words that are no answer. */
enum word { WORD_NONE, WORD_BACK, WORD_EXPLAIN, WORD_SHOW, WORD_LEAVE, WORD_DROP, WORD_HELP };

static enum word word_of(const struct asking *asking, const char *answer, const char **rest)
{
    static const struct {
        const char *word;
        enum word means;
    } rows[] = {{"back", WORD_BACK},   {"explain", WORD_EXPLAIN}, {"show", WORD_SHOW},
                {"leave", WORD_LEAVE}, {"drop", WORD_DROP},       {"help", WORD_HELP}};
    const struct question *question = at_hand(asking, asking->stage);
    if (question != NULL && question->blank.key->form == FORM_CHOICE &&
        choice_find(question->blank.key, answer) != NULL)
        return WORD_NONE;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        size_t length = strlen(rows[i].word);
        *rest = answer + length;
        if (text_same(rows[i].word, answer) ||
            (rows[i].means == WORD_LEAVE && text_begins(answer, "leave ")))
            return rows[i].means;
    }
    return WORD_NONE;
}

static enum asking_turn answer_plain(struct asking *asking, const char *answer, struct text *into,
                                     struct messages *messages)
{
    const struct question *question = at_hand(asking, asking->stage);
    if (asking->text == NULL) {
        answer_kind(asking, answer, into);
        return ASKING_GOES_ON;
    }
    if (question == NULL)
        return end_stage(asking) ? ASKING_LEAVES : ASKING_GOES_ON;
    bool shows = answer_question(asking, question, answer, into, messages);
    /* At the end of a stage too, but not twice in a row. */
    bool ends = at_hand(asking, asking->stage) == NULL && asking->stage == STAGE_NEEDED;
    return shows || ends ? ASKING_SHOWS : ASKING_GOES_ON;
}

enum asking_turn asking_answer(struct asking *asking, const char *answer, struct text *into,
                               struct messages *messages, const char **name)
{
    struct arena *arena = asking->arena;
    const char *rest = "";
    size_t length = strlen(answer);
    while (length > 0 && strchr(" \t\r\n", answer[length - 1]) != NULL)
        length--;
    answer = text_copy_part(arena, answer, length);
    answer += strspn(answer, " \t");
    *name = NULL;
    switch (word_of(asking, answer, &rest)) {
    case WORD_NONE:
        return answer_plain(asking, answer, into, messages);
    case WORD_BACK:
        go_back(asking, into);
        break;
    case WORD_EXPLAIN:
        explain(asking, into);
        break;
    case WORD_HELP:
        text_add_wrapped(into, greeting, 0, 0, asking->width);
        break;
    case WORD_SHOW:
        return ASKING_SHOWS;
    case WORD_LEAVE:
        rest += strspn(rest, " ");
        *name = *rest != '\0' ? rest : NULL;
        return ASKING_LEAVES;
    case WORD_DROP:
        return ASKING_DROPS;
    }
    return ASKING_GOES_ON;
}

const char *asking_text(struct asking *asking)
{
    return asking->text != NULL ? rough_with_help(&asking->rough, asking->arena) : NULL;
}

const char *asking_kind(const struct asking *asking)
{
    return picks_words(asking->arena, asking->said);
}

const struct system *asking_system(const struct asking *asking)
{
    return asking->text != NULL ? asking->rough.system : NULL;
}

void asking_take_tellings(struct asking *asking, const struct tellings *tellings)
{
    asking->tellings = *tellings;
    if (asking->text != NULL)
        list_questions(asking);
}
