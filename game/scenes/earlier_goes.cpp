#include "game/scenes/earlier_goes.h"

#include <algorithm>

#include "game/marking/drill_marks.h"
#include "game/records/attempt_file.h"
#include "game/scenes/shelf_files.h"

namespace halfdrop {

namespace {

bool is_the_same(const Attempt& one, const Attempt& other) {
  return one.seed == other.seed && one.changes.size() == other.changes.size() &&
         one.changes.back().tick == other.changes.back().tick;
}

bool something_done(const DrillFigures& drill) {
  if (const auto* reading = std::get_if<ReadingDrill>(&drill)) return reading->read > 0;
  if (const auto* filling = std::get_if<FillingDrill>(&drill)) return filling->looked;
  if (const auto* knowing = std::get_if<KnowingDrill>(&drill)) return knowing->begun();
  const auto& volumes = std::get<DeliveryDrill>(drill).volumes;
  return std::any_of(volumes.begin(), volumes.end(),
                     [](const VolumeDelivered& volume) { return volume.delivered_cm3.has_value(); });
}

struct OnFile {
  std::string when;
  Attempt attempt;
};

/// Handed in before this attempt by the same person, oldest first.
std::vector<OnFile> goes_before(const std::string& folder, const Attempt& attempt) {
  std::vector<OnFile> before;
  for (const auto& path : attempts_at(folder, attempt.level.id)) {
    auto file = read_attempt(path.string());
    if (!file || !same_drill(file->attempt, attempt) || !has_ended(file->attempt)) continue;
    if (is_the_same(file->attempt, attempt)) break;
    before.push_back({day_and_time(changed(path)), std::move(file->attempt)});
  }
  return before;
}

/// Nothing when it does not replay, or nothing was done.
std::optional<EarlierGo> marked_go(const OnFile& on_file) {
  MarkedAttempt marked = mark(on_file.attempt);
  if (!marked.outcome.reproduced || !marked.drill || !something_done(*marked.drill)) return std::nullopt;
  return EarlierGo{on_file.when, std::move(marked)};
}

}  // namespace

std::vector<EarlierGo> earlier_goes(const std::string& folder, const Attempt& attempt, std::size_t most) {
  std::vector<EarlierGo> goes;
  if (!attempt.level.drill || attempt.changes.empty() || most == 0) return goes;
  const std::vector<OnFile> before = goes_before(folder, attempt);
  // The first, then from the latest backwards: of hundreds only those shown are replayed.
  auto first = before.begin();
  for (; first != before.end() && goes.empty(); ++first) {
    if (auto go = marked_go(*first)) goes.push_back(std::move(*go));
  }
  for (auto latest = before.end(); latest != first && goes.size() < most; --latest) {
    if (auto go = marked_go(*std::prev(latest))) goes.push_back(std::move(*go));
  }
  if (!goes.empty()) std::reverse(goes.begin() + 1, goes.end());
  return goes;
}

}  // namespace halfdrop
