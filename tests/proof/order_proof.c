/* Is the order right? Compares the plan with all orders, for the ready cars and for networks made
 * up by dice, by the simulation that the planner uses. Prints tables; exit status 1 when something
 * that docs/bleeding.md claims does not hold.
 *
 *     order_proof [--networks N] [--seed S] [--every] [--only N] [--page] [--page-is FILE]
 *
 * Planner and judge share one simulation: the comparison shows that the plan finds what that model
 * has to give, not that the model is true; docs/bleeding.md says what it leaves out. */
#include <getopt.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "proof_tables.h"

struct wishes {
    unsigned long networks, seed, only;
    bool every, page;
    const char *page_is;
};

static bool read_number(const char *words, unsigned long *number)
{
    char *end;
    *number = strtoul(words, &end, 10);
    return *words != '\0' && *end == '\0';
}

static bool read_wishes(int count, char **words, struct wishes *wishes)
{
    static const struct option options[] = {{"networks", required_argument, NULL, 'n'},
                                            {"seed", required_argument, NULL, 's'},
                                            {"only", required_argument, NULL, 'o'},
                                            {"every", no_argument, NULL, 'e'},
                                            {"page", no_argument, NULL, 'p'},
                                            {"page-is", required_argument, NULL, 'i'},
                                            {NULL, 0, NULL, 0}};
    int letter;
    while ((letter = getopt_long(count, words, "", options, NULL)) != -1) {
        bool fine = true;
        if (letter == 'n')
            fine = read_number(optarg, &wishes->networks);
        else if (letter == 's')
            fine = read_number(optarg, &wishes->seed);
        else if (letter == 'o')
            fine = read_number(optarg, &wishes->only) && wishes->only > 0;
        else if (letter == 'e')
            wishes->every = true;
        else if (letter == 'p')
            wishes->page = true;
        else if (letter == 'i')
            wishes->page_is = optarg;
        else
            fine = false;
        if (!fine)
            return false;
    }
    return optind == count;
}

/* Whether the page holds the section as it comes out now. */
static bool page_holds(const char *path, const char *section, struct arena *arena)
{
    FILE *in = fopen(path, "rb");
    if (in == NULL) {
        fprintf(stderr, "%s cannot be read\n", path);
        return false;
    }
    struct text page = text_start(arena);
    char bytes[4096];
    for (size_t got; (got = fread(bytes, 1, sizeof bytes, in)) > 0;)
        text_add_bytes(&page, bytes, got);
    fclose(in);
    bool holds = page.count > 0 && strstr(page.items, section) != NULL;
    if (!holds)
        fprintf(stderr, "%s does not hold the section that --page prints\n", path);
    return holds;
}

static struct proof prove(const struct wishes *wishes, struct text *listing, struct arena *arena)
{
    const char *root = getenv("SOURCE_ROOT") != NULL ? getenv("SOURCE_ROOT") : ".";
    struct proof proof = {.networks = wishes->networks, .seed = wishes->seed};
    proof_cars(&proof, root, wishes->every, listing, arena);
    proof_made_up(&proof, wishes->every, listing, arena);
    proof_toy(&proof, arena);
    return proof;
}

static int run(const struct wishes *wishes, struct arena *arena)
{
    struct text listing = text_start(arena), page = text_start(arena);
    if (wishes->only > 0) {
        proof_only(wishes->seed, wishes->only, &listing, arena);
        printf("%s", listing.items);
        return 0;
    }
    struct proof proof = prove(wishes, &listing, arena);
    proof_page(&proof, &page, arena);
    if (wishes->page) {
        printf("%s", page.items);
    } else {
        proof_summary(&proof, &listing, arena);
        printf("%s", listing.items);
    }
    bool holds = proof_holds(&proof, stderr);
    if (wishes->page_is != NULL)
        holds = page_holds(wishes->page_is, page.items, arena) && holds;
    return holds ? 0 : 1;
}

int main(int count, char **words)
{
    struct wishes wishes = {.networks = 1000, .seed = 1};
    if (!read_wishes(count, words, &wishes)) {
        fprintf(stderr, "order_proof [--networks N] [--seed S] [--every] [--only N] [--page] "
                        "[--page-is FILE]\n");
        return 2;
    }
    struct arena *arena = arena_create();
    if (arena == NULL)
        return 4;
    int status = run(&wishes, arena);
    arena_destroy(arena);
    return status;
}
