#include <ostream>

#include "game/desk/commands.h"
#include "game/level/level.h"

namespace halfdrop::desk {

int check_levels(const std::vector<std::string>& levels, Streams streams) {
  std::vector<int> statuses;
  for (const std::string& path : levels) {
    const Result<Level> level = read_level(path);
    if (level) streams.out << path << ": sound\n";
    statuses.push_back(level ? kDone : report(level.error(), streams));
  }
  return batch_status(statuses);
}

}  // namespace halfdrop::desk
