#include "game/scenes/earlier_goes.h"

#include <algorithm>

#include "game/marking/drill_marks.h"
#include "game/records/attempt_file.h"
#include "game/scenes/shelf_files.h"

namespace halfdrop {

namespace {

bool handed_in(const Attempt& attempt) {
  return !attempt.changes.empty() && std::holds_alternative<Ending>(attempt.changes.back().what);
}

bool is_the_same(const Attempt& one, const Attempt& other) {
  return one.seed == other.seed && one.changes.size() == other.changes.size() &&
         one.changes.back().tick == other.changes.back().tick;
}

bool something_done(const DrillFigures& drill) {
  if (const auto* reading = std::get_if<ReadingDrill>(&drill)) return reading->read > 0;
  if (const auto* filling = std::get_if<FillingDrill>(&drill)) return filling->looked;
  const auto& volumes = std::get<DeliveryDrill>(drill).volumes;
  return std::any_of(volumes.begin(), volumes.end(),
                     [](const VolumeDelivered& volume) { return volume.delivered_cm3.has_value(); });
}

}  // namespace

std::vector<EarlierGo> earlier_goes(const std::string& folder, const Attempt& attempt, std::size_t most) {
  std::vector<EarlierGo> goes;
  if (!attempt.level.drill || attempt.changes.empty()) return goes;
  auto paths = files_of(folder, ".jsonl");
  std::erase_if(paths,
                [&](const auto& path) { return !path.filename().string().starts_with(attempt.level.id); });
  std::stable_sort(paths.begin(), paths.end(),
                   [](const auto& a, const auto& b) { return changed(a) < changed(b); });
  for (const auto& path : paths) {
    const auto file = read_attempt(path.string());
    if (!file || file->attempt.alias != attempt.alias || file->attempt.level.id != attempt.level.id) continue;
    if (!handed_in(file->attempt)) continue;
    if (is_the_same(file->attempt, attempt)) break;
    MarkedAttempt marked = mark(file->attempt);
    if (!marked.outcome.reproduced || !marked.drill || !something_done(*marked.drill)) continue;
    goes.push_back({day_and_time(changed(path)), std::move(marked)});
    if (goes.size() > most) goes.erase(goes.begin() + 1);  // the first stays
  }
  return goes;
}

}  // namespace halfdrop
