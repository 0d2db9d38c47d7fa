#ifndef TESTS_SUPPORT_OWN_FOLDER_H
#define TESTS_SUPPORT_OWN_FOLDER_H

/* An empty folder for a group of tests, gone with all that is in it when the group ends: set-up and
 * tear-down of cmocka_run_group_tests. */
int own_folder_make(void **state);
int own_folder_remove(void **state);
const char *own_folder(void);

#endif
