#include <algorithm>
#include <charconv>
#include <ostream>

#include "game/desk/commands.h"

namespace halfdrop::desk {

int wrong_argument(std::string_view option, const std::string& message, Streams streams) {
  streams.err << "halfdrop-desk: " << option << ": " << message << '\n';
  return kWrongArguments;
}

int report(const std::vector<Fault>& faults, Streams streams) {
  for (const Fault& fault : faults) streams.err << to_string(fault) << '\n';
  return exit_status(faults);
}

int batch_status(const std::vector<int>& statuses) {
  if (statuses.size() == 1) return statuses.front();
  const bool all_done = std::all_of(statuses.begin(), statuses.end(), [](int s) { return s == kDone; });
  return all_done ? kDone : kFailed;
}

std::optional<std::uint64_t> seed_from(std::string_view text) {
  std::uint64_t value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return value;
}

}  // namespace halfdrop::desk
