#pragma once
// Faults of files and inputs are values; each points at its place.

#include <string>
#include <vector>

#include <tl/expected.hpp>

namespace halfdrop {

enum class FaultKind { cannot_open, cannot_parse, invalid, not_reproduced };

struct Fault {
  FaultKind kind = FaultKind::invalid;
  std::string file;
  std::string place;    ///< JSON pointer, or "line 12"; empty for the whole file
  std::string message;  ///< what was found and what was expected
};

/// "file: place: message", one line: control characters are escaped
[[nodiscard]] std::string to_string(const Fault& fault);

/// Exit status of a program that met these faults in one file: 0 none, 3 cannot be opened or parsed, 1
/// otherwise.
[[nodiscard]] int exit_status(const std::vector<Fault>& faults);

template <class T>
using Result = tl::expected<T, std::vector<Fault>>;

}  // namespace halfdrop
