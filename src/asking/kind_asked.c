#include "asking/kind_asked.h"

#include <stdlib.h>
#include <string.h>

#include "asking/question_words.h"

static picks bit(int pick)
{
    return (picks)1 << pick;
}

picks kind_settled(picks said)
{
    if (said != 0 && (said & group_picks(GROUP_KIND)) == 0)
        said |= bit((int)group_usual(GROUP_KIND, said));
    return said;
}

enum pick_group kind_next(picks said)
{
    int group = 0;
    while (group < GROUP_COUNT && (!group_applies((enum pick_group)group, said) ||
                                   (said & group_picks((enum pick_group)group)) != 0))
        group++;
    return (enum pick_group)group;
}

void kind_words(struct text *into, enum pick_group group, picks said, bool again, int width)
{
    const struct pick_row *rows = pick_rows();
    picks fitting = group_fitting(group, said);
    int nth = 0;
    text_add_wrapped(into, group_asked(group), 0, 2, width);
    if (again)
        return;
    for (int i = 0; i < PICK_COUNT; i++)
        if ((fitting & bit(i)) != 0)
            add_hung(into, text_print(into->arena, "%d", ++nth),
                     text_print(into->arena, "%s: %s", rows[i].word, rows[i].help), width);
    add_hung(into, "",
             text_print(into->arena, "Enter takes: %s", rows[group_usual(group, said)].word),
             width);
}

/* The word with that number in the list; PICK_COUNT where there is none. */
static int numbered(picks fitting, const char *answer)
{
    size_t digits = strspn(answer, "0123456789");
    if (digits == 0 || digits > 3 || answer[digits] != '\0')
        return PICK_COUNT;
    long number = strtol(answer, NULL, 10);
    int pick = 0;
    while (pick < PICK_COUNT && !((fitting & bit(pick)) != 0 && --number == 0))
        pick++;
    return pick;
}

bool kind_take(struct text *trouble, enum pick_group group, const char *answer, picks *said)
{
    int pick = *answer == '\0' ? (int)group_usual(group, *said)
                               : numbered(group_fitting(group, *said), answer);
    if (pick < PICK_COUNT) {
        *said |= bit(pick);
        return true;
    }
    picks with = *said;
    if (!picks_read(trouble, answer, &with))
        return false;
    *said = kind_settled(with);
    return true;
}
