#include "game/level/fault.h"

#include <algorithm>

namespace halfdrop {
namespace {

/// What came out of a file may hold line ends or escape sequences: a fault stays one line of plain text.
std::string one_line(const std::string& text) {
  constexpr char kHex[] = "0123456789abcdef";
  std::string line;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    const bool c1 = byte == 0xc2 && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xa0;
    if (byte >= 0x20 && byte != 0x7f && !c1) {
      line += text[i];
      continue;
    }
    const auto code = c1 ? static_cast<unsigned char>(text[++i]) : byte;
    line += "\\u00";
    line += kHex[code >> 4];
    line += kHex[code & 15];
  }
  return line;
}

}  // namespace

std::string to_string(const Fault& fault) {
  std::string line = fault.file;
  if (!fault.place.empty()) line += ": " + fault.place;
  return one_line(line + ": " + fault.message);
}

int exit_status(const std::vector<Fault>& faults) {
  const auto unreadable = [](const Fault& fault) {
    return fault.kind == FaultKind::cannot_open || fault.kind == FaultKind::cannot_parse;
  };
  if (faults.empty()) return 0;
  return std::any_of(faults.begin(), faults.end(), unreadable) ? 3 : 1;
}

}  // namespace halfdrop
