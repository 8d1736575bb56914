#include "game/level/fault_list.h"

namespace halfdrop {

void FaultList::add(FaultKind kind, std::string place, std::string message) {
  if (faults_.size() >= kMostFaults) {
    ++unlisted_;
    return;
  }
  faults_.push_back({kind, file_, std::move(place), std::move(message)});
}

void FaultList::add(std::string place, std::string message) {
  add(FaultKind::invalid, std::move(place), std::move(message));
}

void FaultList::add_all(const std::vector<Fault>& faults, const std::string& place_prefix) {
  for (const Fault& fault : faults) {
    if (faults_.size() >= kMostFaults) {
      ++unlisted_;
      continue;
    }
    faults_.push_back(fault);
    faults_.back().place = place_prefix + fault.place;
  }
}

std::vector<Fault> FaultList::take() {
  if (unlisted_ > 0)
    faults_.push_back(
        {FaultKind::invalid, file_, "", std::to_string(unlisted_) + " more faults, not listed"});
  unlisted_ = 0;
  return std::exchange(faults_, {});
}

}  // namespace halfdrop
