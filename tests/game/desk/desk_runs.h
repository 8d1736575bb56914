#pragma once
// Runs command lines of the desk in this process.

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>
#include <vector>

#include "game/desk/desk.h"

namespace halfdrop::test {

struct Ran {
  int status = 0;
  std::string out, err;
};

inline Ran desk(std::vector<std::string> words) {
  words.insert(words.begin(), "halfdrop-desk");
  std::vector<const char*> arguments;
  for (const std::string& word : words) arguments.push_back(word.c_str());
  std::ostringstream out, err;
  const int status = halfdrop::desk::run(static_cast<int>(arguments.size()), arguments.data(), out, err);
  return {status, out.str(), err.str()};
}

inline bool contains(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

inline std::string text_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

inline std::vector<std::string> lines_of(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

inline const std::string kVinegar = HALFDROP_SOURCE_FOLDER "/levels/01-spirit-vinegar.json";
inline const std::string kBadLevels = HALFDROP_SOURCE_FOLDER "/tests/bad_levels/";

/// A folder of its own, gone with it.
class Scratch {
 public:
  explicit Scratch(const std::string& name)
      : folder_(std::filesystem::path(HALFDROP_BUILD_FOLDER) /
                ("scratch-desk-" + name + "-" + std::to_string(::getpid()))) {
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directories(folder_);
  }
  ~Scratch() {
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
  [[nodiscard]] std::string path(const std::string& name) const { return (folder_ / name).string(); }

 private:
  std::filesystem::path folder_;
};

/// The first level with a coarser flask than a player's, in a file of that folder: quicker.
inline std::string coarse_vinegar(const Scratch& scratch) {
  const std::string path = scratch.path("01-spirit-vinegar.json");
  std::ofstream(path, std::ios::binary) << "{\"flask\": {\"fineness\": 0.25}," << text_of(kVinegar).substr(1);
  return path;
}

}  // namespace halfdrop::test
