/* A file layer that remembers only what was synced. Preloaded into a process, it copies a file of $FORGETFUL_WATCH to $FORGETFUL_KEPT each
   time the process syncs it, and notes the names in the folder each time the folder is synced. When the power fails, $FORGETFUL_KEPT is what the
   disk is sure to hold.

   cc -shared -fPIC -O2 -o forgetful.so forgetful.c -ldl */
#define _GNU_SOURCE
#include <dirent.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static void place(const char *kept, const char *name, int from, const char *text)
{
    char partial[PATH_MAX], whole[PATH_MAX], block[65536];
    snprintf(partial, sizeof partial, "%s/.%s.partial", kept, name);
    snprintf(whole, sizeof whole, "%s/%s", kept, name);
    int to = open(partial, O_CREAT | O_TRUNC | O_WRONLY, 0600);
    if (text)
        (void)!write(to, text, strlen(text));
    else
        for (off_t at = 0, size; (size = pread(from, block, sizeof block, at)) > 0; at += size)
            (void)!write(to, block, size);
    close(to);
    rename(partial, whole);
}

static void note_names(const char *watch, const char *kept)
{
    char names[65536] = "";
    DIR *folder = opendir(watch);
    for (struct dirent *entry; folder && (entry = readdir(folder));)
        if (entry->d_name[0] != '.' && strlen(names) + strlen(entry->d_name) + 2 < sizeof names)
            strcat(strcat(names, entry->d_name), "\n");
    if (folder)
        closedir(folder);
    place(kept, "names", -1, names);
}

static int remember(int file)
{
    char link[64], path[PATH_MAX];
    const char *watch = getenv("FORGETFUL_WATCH"), *kept = getenv("FORGETFUL_KEPT");
    snprintf(link, sizeof link, "/proc/self/fd/%d", file);
    ssize_t length = readlink(link, path, sizeof path - 1);
    if (!watch || !kept || length < 0)
        return 0;
    path[length] = 0;
    size_t prefix = strlen(watch);
    if (strncmp(path, watch, prefix) != 0)
        return 0;
    if (path[prefix] == 0)
        note_names(watch, kept);
    else if (path[prefix] == '/' && !strchr(path + prefix + 1, '/'))
    {
        /* The descriptor may be for writing only. */
        int reading = open(path, O_RDONLY);
        place(kept, path + prefix + 1, reading, NULL);
        close(reading);
    }
    return 0;
}

int fsync(int file) { return remember(file); }

int fdatasync(int file) { return remember(file); }
