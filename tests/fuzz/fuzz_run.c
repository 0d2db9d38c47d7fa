#define _GNU_SOURCE

#include "fuzz_run.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <unistd.h>

#include "advice/figures/figures.h"
#include "firmpedal.h"

/* FNV-1a: from the text to what is asked of it. */
static unsigned hash(const uint8_t *text, size_t size)
{
    unsigned sum = 2166136261u;
    for (size_t i = 0; i < size; i++)
        sum = (sum ^ text[i]) * 16777619u;
    return sum ^ sum >> 15;
}

/* A file in memory, by the name under which it can be read. */
struct memory_file {
    int handle;
    char path[64];
};

static struct memory_file memory_file(const uint8_t *text, size_t size)
{
    struct memory_file file = {.handle = memfd_create("fuzz", 0)};
    snprintf(file.path, sizeof file.path, "/proc/self/fd/%d", file.handle);
    if (file.handle < 0 || write(file.handle, text, size) != (ssize_t)size)
        abort();
    return file;
}

/* Where the work file begins; the end without one. */
static size_t work_from(const uint8_t *text, size_t size)
{
    static const char head[] = "\n[work]";
    const uint8_t *at = memmem(text, size, head, sizeof head - 1);
    return at == NULL ? size : (size_t)(at - text) + 1;
}

/* Some section's name, for questions about a part. */
static void pick_name(const uint8_t *text, size_t size, unsigned dice, char *into, size_t room)
{
    size_t at = size > 0 ? dice % size : 0;
    const uint8_t *open = size > 0 ? memchr(text + at, '[', size - at) : NULL;
    const uint8_t *end = open == NULL ? NULL : memchr(open, ']', size - (size_t)(open - text));
    if (end == NULL)
        snprintf(into, room, "brake master");
    else
        snprintf(into, room, "%.*s", (int)(end - open - 1), (const char *)open + 1);
}

static void draw(struct fp_desk *desk, struct fp_wishes *wishes, unsigned dice)
{
    static const char *const endings[] = {"pdf", "svg", "png"};
    enum fp_drawing drawing = dice % 2 == 0 ? FP_SHEET : FP_DIAGRAM;
    char path[128];
    const char *folder = getenv("TMPDIR");
    snprintf(path, sizeof path, "%s/fuzz-%d.%s", folder == NULL ? "/tmp" : folder, (int)getpid(),
             drawing == FP_SHEET ? "pdf" : endings[dice / 2 % 3]);
    fp_draw(desk, drawing, path, wishes);
    unlink(path);
}

static void use(const char *words)
{
    if (words != NULL && strlen(words) > (size_t)1 << 30)
        abort();
}

/* Mostly what is quick; one question in 24 is one for which all figures are moved about. */
static enum fp_question pick_question(unsigned dice)
{
    static const enum fp_question quick[] = {FP_BLEED, FP_OPEN, FP_HOSES, FP_SOFT};
    static const enum fp_question slow[] = {FP_CHECK, FP_CURVE, FP_FIT, FP_TRACE};
    return dice % 24 == 0 ? slow[dice / 24 % 4] : quick[dice % 4];
}

static bool ask(struct fp_desk *desk, const uint8_t *text, size_t size, unsigned dice)
{
    char name[128], order[300];
    pick_name(text, size, dice >> 8, name, sizeof name);
    snprintf(order, sizeof order, "%s, rear left", name);
    size_t figures;
    const struct figure_row *rows = figure_rows(&figures);
    struct fp_wishes wishes = {
        .imperial = dice >> 4 & 1,
        .json = dice >> 5 & 1,
        .date = "2026-11-25",
        .effort = dice >> 6 & 1 ? "400 N" : NULL,
        .cylinder = name,
        .bore = "7/8 in",
        .all = dice >> 7 & 1,
        .figure = rows[dice % figures].id,
        .of = dice >> 9 & 1 ? name : NULL,
        .order = dice >> 10 & 1 ? order : NULL,
        .step = dice >> 11 & 1 ? "next" : NULL,
        .method = (enum fp_method)(dice >> 12) % 5,
        .shut_early = dice >> 15 & 1,
        .paper = dice >> 16 & 1 ? FP_LETTER : FP_A4,
        .replace = true,
    };
    const char *answer = NULL;
    fp_ask(desk, pick_question(dice), &wishes, &answer);
    use(answer);
    fp_show(desk, &answer);
    use(answer);
    bool drawn = dice >> 17 & 1 && (dice >> 18) % 32 == 0;
    if (drawn)
        draw(desk, &wishes, dice >> 20);
    return drawn;
}

/* Reads a text into a desk of its own. */
static enum fp_outcome read_text(struct fp_desk *desk, const uint8_t *text, size_t size)
{
    size_t from = work_from(text, size);
    struct memory_file car = memory_file(text, from);
    struct memory_file work = memory_file(text + from, size - from);
    const char *works[] = {work.path};
    enum fp_outcome outcome = fp_read(desk, car.path, works, from < size ? 1 : 0, "2026-11-25");
    close(car.handle);
    close(work.handle);
    return outcome;
}

bool fuzz_reads(const uint8_t *text, size_t size)
{
    struct fp_desk *desk = fp_desk_create();
    bool reads = read_text(desk, text, size) == FP_FINE;
    fp_desk_destroy(desk);
    return reads;
}

struct fuzz_outcome fuzz_run(const uint8_t *text, size_t size)
{
    struct fuzz_outcome outcome = {false, false};
    struct fp_desk *desk = fp_desk_create();
    unsigned dice = hash(text, size);
    outcome.accepted = read_text(desk, text, size) == FP_FINE;
    use(fp_messages(desk, dice & 1));
    if (outcome.accepted)
        outcome.drawn = ask(desk, text, size, dice);
    fp_desk_destroy(desk);
    return outcome;
}
