#include "base/text.h"

#include <limits.h>
#include <string.h>

/* Words longer than this are not looked for; no known word comes close to it. */
#define LONGEST 64

/* A word as letters: what the distance counts. */
struct letters {
    unsigned long items[LONGEST];
    int count;
};

/* Splits UTF-8 into letters, A to Z as a to z. false when the word is too long. A byte that is
 * no UTF-8 counts as a letter of its own. */
static bool split(const char *word, struct letters *letters)
{
    letters->count = 0;
    for (; *word; word++) {
        unsigned char byte = (unsigned char)*word;
        if ((byte & 0xC0) == 0x80 && letters->count > 0) {
            unsigned long *last = &letters->items[letters->count - 1];
            *last = *last << 8 | byte;
            continue;
        }
        if (letters->count == LONGEST)
            return false;
        letters->items[letters->count++] =
            byte >= 'A' && byte <= 'Z' ? (unsigned long)byte - 'A' + 'a' : byte;
    }
    return true;
}

static int smaller(int a, int b)
{
    return a < b ? a : b;
}

/* Fewest letters to add, drop, change or swap with their neighbour, each letter touched once
 * ("optimal string alignment"), by the usual table of distances between beginnings. */
static int distance(const struct letters *a, const struct letters *b)
{
    int table[LONGEST + 1][LONGEST + 1];
    for (int i = 0; i <= a->count; i++)
        table[i][0] = i;
    for (int j = 0; j <= b->count; j++)
        table[0][j] = j;
    for (int i = 1; i <= a->count; i++) {
        for (int j = 1; j <= b->count; j++) {
            bool equal = a->items[i - 1] == b->items[j - 1];
            int best = table[i - 1][j - 1] + (equal ? 0 : 1);
            best = smaller(best, table[i - 1][j] + 1);
            best = smaller(best, table[i][j - 1] + 1);
            if (i > 1 && j > 1 && a->items[i - 1] == b->items[j - 2] &&
                a->items[i - 2] == b->items[j - 1])
                best = smaller(best, table[i - 2][j - 2] + 1);
            table[i][j] = best;
        }
    }
    return table[a->count][b->count];
}

const char *text_nearest(const char *word, const char *const *known, size_t count)
{
    struct letters wanted;
    if (!split(word, &wanted) || wanted.count == 0)
        return NULL;
    const char *nearest = NULL;
    int least = INT_MAX;
    for (size_t i = 0; i < count; i++) {
        struct letters letters;
        if (!split(known[i], &letters))
            continue;
        int mistakes = distance(&wanted, &letters);
        int longer = wanted.count > letters.count ? wanted.count : letters.count;
        if (mistakes < least && mistakes * 3 <= longer) {
            least = mistakes;
            nearest = known[i];
        }
    }
    return nearest;
}

enum { MOST_WORDS = 12 };

/* Splits at blanks, hyphens and points; gives how many words, -1 when there are too many or one is
 * too long. */
static int split_words(const char *text, struct letters words[static MOST_WORDS])
{
    static const char gaps[] = " \t-_.";
    int count = 0;
    for (text += strspn(text, gaps); *text; text += strspn(text, gaps)) {
        char word[LONGEST + 1];
        size_t length = strcspn(text, gaps);
        if (length > LONGEST || count == MOST_WORDS)
            return -1;
        memcpy(word, text, length);
        word[length] = '\0';
        split(word, &words[count++]);
        text += length;
    }
    return count;
}

static bool is_number(const struct letters *word)
{
    for (int i = 0; i < word->count; i++)
        if (word->items[i] < '0' || word->items[i] > '9')
            return false;
    return true;
}

/* Whether a word is the beginning of another: "dia" for "diameter". */
static bool is_short_for(const struct letters *word, const struct letters *known)
{
    enum { LEAST = 3 };
    if (word->count < LEAST || word->count >= known->count)
        return false;
    return memcmp(word->items, known->items, (size_t)word->count * sizeof *word->items) == 0;
}

bool text_mistyped(const char *words, const char *known)
{
    struct letters a[MOST_WORDS], b[MOST_WORDS];
    int count = split_words(words, a), total = 0;
    if (count <= 0 || count != split_words(known, b))
        return false;
    for (int i = 0; i < count; i++) {
        int mistakes = is_short_for(&a[i], &b[i]) ? 0 : distance(&a[i], &b[i]);
        int longer = a[i].count > b[i].count ? a[i].count : b[i].count;
        if (mistakes > 0 && (is_number(&a[i]) || is_number(&b[i])))
            return false;
        if (mistakes > (longer <= 3 ? 0 : longer <= 6 ? 1 : longer <= 9 ? 2 : 3))
            return false;
        total += mistakes;
    }
    return total <= 3;
}
