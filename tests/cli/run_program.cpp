// SPDX-License-Identifier: GPL-3.0-or-later
#include "run_program.h"

#include <chrono>
#include <csignal>
#include <filesystem>
#include <sstream>
#include <thread>

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include "../scratch_folder.h"

std::vector<nlohmann::ordered_json> Ran::lines() const {
    std::vector<nlohmann::ordered_json> objects;
    std::istringstream in(out);
    for (std::string line; std::getline(in, line);) objects.push_back(nlohmann::ordered_json::parse(line));
    return objects;
}

namespace {

void interruptAtFirstOutput(pid_t child, const std::string& out) {
    using namespace std::chrono_literals;
    for (int tries = 0; tries < 3000; ++tries) {
        std::error_code notYet;
        if (std::filesystem::file_size(out, notYet) > 0 && !notYet) break;
        std::this_thread::sleep_for(10ms);
    }
    ::kill(child, SIGINT);
}

}  // namespace

Ran ringrule(const std::vector<std::string>& arguments, const RunOptions& options) {
    const ScratchFolder scratch;
    const std::string out = options.outputFile.empty() ? (scratch / "out").string() : options.outputFile;
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
    if (options.interruptAtFirstOutput) interruptAtFirstOutput(child, out);
    int status = 0;
    ::waitpid(child, &status, 0);
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, options.outputFile.empty() ? contentOf(out) : "",
            contentOf(err)};
}
