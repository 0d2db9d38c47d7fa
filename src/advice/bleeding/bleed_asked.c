#include "advice/bleeding/bleed_asked.h"

#include <ctype.h>
#include <string.h>
#include <strings.h>

#include "advice/bleeding/bleed_plan.h"
#include "advice/bleeding/bleed_scope.h"
#include "base/text.h"

struct asking {
    const struct system *system;
    struct arena *arena;
    struct nipple *nipples; /* all of the car */
    const char **words;     /* of each, as one would write it */
    int count;
};

/* Words that say nothing about which nipple is meant. */
static bool is_idle(const char *word, size_t length)
{
    static const char *const idle[] = {"nipple", "nipples", "the", "wheel", "brake", "bleed"};
    for (size_t i = 0; i < sizeof idle / sizeof *idle; i++) {
        if (strlen(idle[i]) == length && strncasecmp(word, idle[i], length) == 0) {
            return true;
        }
    }
    return false;
}

/* The next word, set apart by anything that is no letter or figure; NULL at the end. */
static const char *next_word(const char **at, size_t *length)
{
    const char *word = *at;
    while (*word != '\0' && !isalnum((unsigned char)*word) && (unsigned char)*word < 0x80) {
        word++;
    }
    const char *end = word;
    while (isalnum((unsigned char)*end) || (unsigned char)*end >= 0x80) {
        end++;
    }
    *length = (size_t)(end - word);
    *at = end;
    return *length == 0 ? NULL : word;
}

static bool has_word(const char *words, const char *word, size_t length)
{
    size_t letters;
    for (const char *own; (own = next_word(&words, &letters)) != NULL;) {
        /* "rear drums" are drums */
        bool plural = letters + 1 == length && tolower((unsigned char)word[letters]) == 's';
        if ((letters == length || plural) && strncasecmp(own, word, letters) == 0) {
            return true;
        }
    }
    return false;
}

/* "2" is the second nipple of a part, named or not. */
static bool is_number(const char *word, size_t length, int number)
{
    return length == 1 && *word == '0' + number;
}

/* Whether all that is asked stands in a nipple's words. *whole: and all of its words are asked. */
static bool means(const char *asked, const char *nipple, int number, bool *whole)
{
    size_t length, said = 0, own = 0;
    const char *at = asked;
    for (const char *word; (word = next_word(&at, &length)) != NULL;) {
        if (is_idle(word, length)) {
            continue;
        }
        if (!has_word(nipple, word, length) && !is_number(word, length, number)) {
            return false;
        }
        said++;
    }
    for (const char *word; (word = next_word(&nipple, &length)) != NULL;) {
        own += !is_idle(word, length);
    }
    *whole = said == own;
    return said > 0;
}

static void list_nipples(struct asking *asking)
{
    const struct system *system = asking->system;
    size_t most = 1;
    for (int i = 0; i < system->part_count; i++) {
        most += (size_t)nipples_of(&system->parts[i]);
    }
    asking->nipples = ARENA_ARRAY(asking->arena, most, struct nipple);
    asking->words = ARENA_ARRAY(asking->arena, most, const char *);
    for (int i = 0; i < system->part_count; i++) {
        for (int n = 0; n < nipples_of(&system->parts[i]); n++) {
            struct nipple nipple = {i, n};
            const char *words = nipple_words(system, nipple, asking->arena);
            const char *comma = strchr(words, ',');
            asking->nipples[asking->count] = nipple;
            asking->words[asking->count++] =
                comma == NULL
                    ? words
                    : text_print(asking->arena, "%.*s%s", (int)(comma - words), words, comma + 1);
        }
    }
}

static const char *names_of(const struct asking *asking, const char *asked)
{
    struct text names = text_start(asking->arena);
    for (int i = 0; i < asking->count; i++) {
        bool whole;
        if (asked == NULL || means(asked, asking->words[i], asking->nipples[i].index + 1, &whole)) {
            text_add(&names, "%s%s", names.count > 0 ? ", " : "", asking->words[i]);
        }
    }
    return names.count > 0 ? names.items : "none";
}

static size_t word_count(const char *words)
{
    size_t length, count = 0;
    while (next_word(&words, &length) != NULL) {
        count++;
    }
    return count;
}

/* The nipple whose words, as far as so many are asked, are nearest; NULL when none is near. */
static const char *nearest_to(const struct asking *asking, const char *asked)
{
    const char **heads = ARENA_ARRAY(asking->arena, (size_t)asking->count + 1, const char *);
    for (int i = 0; i < asking->count; i++) {
        const char *at = asking->words[i];
        size_t length;
        for (size_t words = word_count(asked); words > 0; words--) {
            next_word(&at, &length);
        }
        heads[i] = text_copy_part(asking->arena, asking->words[i], (size_t)(at - asking->words[i]));
    }
    return text_nearest(asked, heads, (size_t)asking->count);
}

/* The nipple that the words leave; -1, with the trouble said. */
static int find(const struct asking *asking, const char *asked, const char **trouble)
{
    int found = -1, count = 0;
    for (int i = 0; i < asking->count; i++) {
        bool whole = false;
        if (!means(asked, asking->words[i], asking->nipples[i].index + 1, &whole)) {
            continue;
        }
        if (whole) {
            return i;
        }
        found = i;
        count++;
    }
    if (count > 1) {
        *trouble =
            text_print(asking->arena, "\"%s\" may be any of: %s", asked, names_of(asking, asked));
    } else if (count == 0) {
        const char *nearest = nearest_to(asking, asked);
        *trouble =
            text_print(asking->arena, "no nipple is called \"%s\"%s%s%s. There are: %s", asked,
                       nearest != NULL ? "; nearest is \"" : "", nearest != NULL ? nearest : "",
                       nearest != NULL ? "\"" : "", names_of(asking, NULL));
    }
    return count == 1 ? found : -1;
}

int bleed_asked_order(const struct system *system, const char *words, struct arena *arena,
                      struct nipple **order, const char **trouble)
{
    struct asking asking = {.system = system, .arena = arena};
    size_t most = 1;
    for (const char *at = words; *at != '\0'; at++) {
        most += *at == ',';
    }
    list_nipples(&asking);
    *order = ARENA_ARRAY(arena, most, struct nipple);
    int count = 0;
    for (const char *at = words;; at++) {
        while (*at == ' ') {
            at++;
        }
        size_t length = strcspn(at, ",");
        size_t letters = length;
        while (letters > 0 && at[letters - 1] == ' ') {
            letters--;
        }
        int found = letters > 0 ? find(&asking, text_copy_part(arena, at, letters), trouble) : -1;
        if (letters > 0 && found < 0) {
            return 0;
        }
        if (found >= 0) {
            (*order)[count++] = asking.nipples[found];
        }
        at += length;
        if (*at == '\0') {
            break;
        }
    }
    if (count == 0) {
        *trouble = text_print(arena, "it names no nipple. There are: %s", names_of(&asking, NULL));
    }
    return count;
}

int bleed_asked_method(const char *id)
{
    size_t count;
    const struct method_row *rows = method_rows(&count);
    for (size_t i = 0; i < count; i++) {
        if (strcmp(rows[i].id, id) == 0) {
            return (int)rows[i].method;
        }
    }
    return -1;
}
