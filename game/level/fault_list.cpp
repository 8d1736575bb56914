#include "game/level/fault_list.h"

namespace halfdrop {
namespace {

/// Bytes of a place that are shown: no key of ours is long.
constexpr std::size_t kLongestPlace = 400;

}  // namespace

void FaultList::add(FaultKind kind, std::string place, std::string message) {
  put({kind, file_, std::move(place), std::move(message)});
}

void FaultList::add(std::string place, std::string message) {
  add(FaultKind::invalid, std::move(place), std::move(message));
}

void FaultList::add_all(const std::vector<Fault>& faults, const std::string& place_prefix) {
  for (const Fault& fault : faults) put({fault.kind, fault.file, place_prefix + fault.place, fault.message});
}

void FaultList::put(Fault fault) {
  if (faults_.size() >= kMostFaults) {
    ++unlisted_;
    return;
  }
  // "line 12 " stands before the pointers of that line; the whole line is "line 12".
  if (fault.place.ends_with(' ')) fault.place.pop_back();
  if (fault.place.size() > kLongestPlace) fault.place.replace(kLongestPlace, std::string::npos, "...");
  faults_.push_back(std::move(fault));
}

std::vector<Fault> FaultList::take() {
  if (unlisted_ > 0)
    faults_.push_back(
        {FaultKind::invalid, file_, "", std::to_string(unlisted_) + " more faults, not listed"});
  unlisted_ = 0;
  return std::exchange(faults_, {});
}

}  // namespace halfdrop
