// SPDX-License-Identifier: GPL-3.0-or-later
#include "run_program.h"

#include <sstream>

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include "../records/scratch_folder.h"

std::vector<nlohmann::ordered_json> Ran::lines() const {
    std::vector<nlohmann::ordered_json> objects;
    std::istringstream in(out);
    for (std::string line; std::getline(in, line);) objects.push_back(nlohmann::ordered_json::parse(line));
    return objects;
}

Ran ringrule(const std::vector<std::string>& arguments) {
    const ScratchFolder scratch;
    const std::string out = scratch / "out";
    const std::string err = scratch / "err";
    std::vector<std::string> words{RINGRULE_PROGRAM};
    words.insert(words.end(), arguments.begin(), arguments.end());
    std::vector<char*> argv;
    for (std::string& word : words) argv.push_back(word.data());
    argv.push_back(nullptr);
    const pid_t child = ::fork();
    if (child == 0) {
        ::dup2(::open("/dev/null", O_RDONLY), STDIN_FILENO);
        ::dup2(::open(out.c_str(), O_WRONLY | O_CREAT, 0600), STDOUT_FILENO);
        ::dup2(::open(err.c_str(), O_WRONLY | O_CREAT, 0600), STDERR_FILENO);
        ::execv(argv[0], argv.data());
        ::_exit(127);
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, contentOf(out), contentOf(err)};
}
