#include "support/own_folder.h"

#include <stdlib.h>
#include <string.h>

#include "support/run_cli.h"

static char folder[64];

int own_folder_make(void **state)
{
    (void)state;
    strcpy(folder, "/tmp/firmpedal-test-XXXXXX");
    return mkdtemp(folder) == NULL;
}

int own_folder_remove(void **state)
{
    (void)state;
    const char *const words[] = {"rm", "-rf", folder, NULL};
    struct run run = run_program(NULL, words, NULL, 10);
    run_finish(&run);
    return 0;
}

const char *own_folder(void)
{
    return folder;
}
