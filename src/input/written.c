#include "input/written.h"

#include <string.h>

#include "base/text.h"

struct written written_part(struct arena *arena, struct written whole, size_t start, size_t length)
{
    size_t end = start + length;
    while (start < end && strchr(" \t", whole.text[start]))
        start++;
    while (end > start && strchr(" \t", whole.text[end - 1]))
        end--;
    struct written part = whole;
    part.place.column += text_letters(text_copy_part(arena, whole.text, start));
    part.text = text_copy_part(arena, whole.text + start, end - start);
    return part;
}
