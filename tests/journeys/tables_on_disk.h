// Tables of readings made for a journey, and the program run on them.
#pragma once

#include "child_process.h"

#include <filesystem>
#include <string>
#include <vector>

namespace keenfall::journeys {

// Readings of `blades` blades, three runs each, that double every 10, 20, 30... cuts; the runs of a
// blade differ by 10 %. Blade 1 is called A, the last one C.
std::string readings_of(int blades);

// A path in a folder of this process's own.
std::filesystem::path scratch(const std::string& name);

// The path of the file it writes.
std::string a_table(const std::string& name, const std::string& content);

std::string content_of(const std::string& path);

// In an UTF-8 locale.
Said keenfall(const std::vector<std::string>& words);

}  // namespace keenfall::journeys
