#pragma once
// The first level as text, for tests that break it.

#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "game/level/level.h"

namespace halfdrop::test {

inline std::string source_file(const std::string& path) {
  return std::string(HALFDROP_SOURCE_FOLDER) + "/" + path;
}

inline std::string text_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  REQUIRE_MESSAGE(file.good(), path);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

/// A folder of a test's own; it goes when the test ends.
class TemporaryFolder {
 public:
  TemporaryFolder() : path_((std::filesystem::temp_directory_path() / "halfdrop-test-XXXXXX").string()) {
    REQUIRE(::mkdtemp(path_.data()) != nullptr);
  }
  ~TemporaryFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;

  [[nodiscard]] std::string file(const std::string& name) const { return path_ + "/" + name; }
  /// Writes a file and returns its path.
  [[nodiscard]] std::string file(const std::string& name, const std::string& text) const {
    std::ofstream(file(name), std::ios::binary) << text;
    return file(name);
  }

 private:
  std::string path_;
};

inline const std::string& good_level_path() {
  static const std::string path = source_file("levels/01-spirit-vinegar.json");
  return path;
}

inline Level good_level() {
  Result<Level> level = read_level(good_level_path());
  if (!level) {
    for (const Fault& fault : level.error()) MESSAGE(to_string(fault));
  }
  REQUIRE(level.has_value());
  level->pipette.by_hand = false;                         // practised hands
  level->burette.wet_cm3 = level->pipette.wet_cm3 = 0.0;  // hands of tests rinse nothing
  level->filling_below_eye = false;                       // ... and lower nothing
  return *level;
}

/// Whether one of the faults stands at `place`.
inline bool has_fault_at(const std::vector<Fault>& faults, const std::string& place) {
  for (const Fault& fault : faults) {
    if (fault.place == place) return true;
  }
  return false;
}

inline std::string all_of(const std::vector<Fault>& faults) {
  std::string text;
  for (const Fault& fault : faults) text += to_string(fault) + "\n";
  return text;
}

/// Why there is no value; empty where there is one, whose error must not be touched (doctest puts a message
/// together for what passes, too).
template <class T>
std::string why_not(const Result<T>& result) {
  return result.has_value() ? std::string() : all_of(result.error());
}

}  // namespace halfdrop::test
