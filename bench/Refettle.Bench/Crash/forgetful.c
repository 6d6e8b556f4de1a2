/* A file layer that remembers only what was synced. Preloaded into a process, it copies a file below $FORGETFUL_WATCH to $FORGETFUL_KEPT/f<inode> each
   time the process syncs it, and writes the names in a folder to d<inode> (those of the watched one to root) each time that folder is synced: a line each, kind (f or d), inode, name. When
   the power fails, what can be reached from the watched folder's own names is what the disk is sure to hold. A file that is renamed keeps what was synced of it.

   cc -shared -fPIC -O2 -o forgetful.so forgetful.c -ldl */
#define _GNU_SOURCE
#include <dirent.h>
#include <dlfcn.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static void place(const char *kept, char kind, ino_t inode, int from, const char *text)
{
    char partial[PATH_MAX], whole[PATH_MAX], block[65536];
    snprintf(partial, sizeof partial, "%s/.%c%lu.partial", kept, kind, (unsigned long)inode);
    if (inode)
        snprintf(whole, sizeof whole, "%s/%c%lu", kept, kind, (unsigned long)inode);
    else
        snprintf(whole, sizeof whole, "%s/root", kept);
    int to = open(partial, O_CREAT | O_TRUNC | O_WRONLY, 0600);
    if (text)
        (void)!write(to, text, strlen(text));
    else
        for (off_t at = 0, size; (size = pread(from, block, sizeof block, at)) > 0; at += size)
            (void)!write(to, block, size);
    close(to);
    rename(partial, whole);
}

static void note_names(const char *path, const char *kept, ino_t inode)
{
    const size_t room = 1 << 20;
    size_t length = 0;
    DIR *folder = opendir(path);
    char *names = calloc(1, room);
    for (struct dirent *entry; folder && (entry = readdir(folder));)
        if (entry->d_name[0] != '.' && length + strlen(entry->d_name) + 32 < room)
            length += sprintf(names + length, "%c %lu %s\n", entry->d_type == DT_DIR ? 'd' : 'f', (unsigned long)entry->d_ino, entry->d_name);
    if (folder)
        closedir(folder);
    place(kept, 'd', inode, -1, names);
    free(names);
}

static int remember(int file)
{
    char link[64], path[PATH_MAX];
    struct stat about;
    const char *watch = getenv("FORGETFUL_WATCH"), *kept = getenv("FORGETFUL_KEPT");
    snprintf(link, sizeof link, "/proc/self/fd/%d", file);
    ssize_t length = readlink(link, path, sizeof path - 1);
    if (!watch || !kept || length < 0 || fstat(file, &about) != 0)
        return 0;
    path[length] = 0;
    size_t prefix = strlen(watch);
    if (strncmp(path, watch, prefix) != 0 || (path[prefix] != 0 && path[prefix] != '/'))
        return 0;
    if (S_ISDIR(about.st_mode))
        note_names(path, kept, path[prefix] == 0 ? 0 : about.st_ino);
    else
    {
        /* The descriptor may be for writing only. */
        int reading = open(path, O_RDONLY);
        place(kept, 'f', about.st_ino, reading, NULL);
        close(reading);
    }
    return 0;
}

int fsync(int file) { return remember(file); }

int fdatasync(int file) { return remember(file); }

/* Who asks the C library for fsync by its name gets this one too. */
void *dlsym(void *library, const char *name)
{
    static void *(*really)(void *, const char *);
    static const char *const versions[] = {"GLIBC_2.34", "GLIBC_2.17", "GLIBC_2.2.5"};
    for (int i = 0; !really && i < 3; i++)
        really = (void *(*)(void *, const char *))dlvsym(RTLD_NEXT, "dlsym", versions[i]);
    return strcmp(name, "fsync") == 0 ? (void *)fsync : really(library, name);
}

/* The next file to get this inode begins with nothing synced. */
int unlink(const char *path)
{
    char memory[PATH_MAX];
    struct stat about;
    const char *kept = getenv("FORGETFUL_KEPT");
    int (*really)(const char *) = (int (*)(const char *))dlsym(RTLD_NEXT, "unlink");
    int known = kept && lstat(path, &about) == 0 && about.st_nlink == 1;
    int result = really(path);
    if (known && result == 0)
    {
        snprintf(memory, sizeof memory, "%s/f%lu", kept, (unsigned long)about.st_ino);
        really(memory);
    }
    return result;
}
