#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>

#include "game/level/strict_json.h"

namespace halfdrop {

tl::expected<std::string, Fault> read_file(const std::string& path, std::size_t most_bytes) {
  const auto fault = [&](FaultKind kind, const std::string& message) {
    return tl::unexpected(Fault{kind, path, "", message});
  };
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(path.c_str(), "rb"), &std::fclose);
  if (!file) return fault(FaultKind::cannot_open, std::string("cannot be opened: ") + std::strerror(errno));
  std::string text;
  char block[1 << 16];
  while (const std::size_t got = std::fread(block, 1, sizeof block, file.get())) {
    text.append(block, got);
    if (text.size() > most_bytes)
      return fault(FaultKind::cannot_parse, "longer than " + std::to_string(most_bytes) + " bytes");
  }
  if (std::ferror(file.get()) != 0)
    return fault(FaultKind::cannot_open, std::string("cannot be read: ") + std::strerror(errno));
  return text;
}

}  // namespace halfdrop
