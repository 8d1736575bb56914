#pragma once
// Collects the faults of one file, all of them at once.

#include <string>
#include <utility>
#include <vector>

#include "game/level/fault.h"

namespace halfdrop {

/// A file of another kind would have a fault in every line: more than these are counted, not listed.
inline constexpr std::size_t kMostFaults = 1000;

class FaultList {
 public:
  explicit FaultList(std::string file) : file_(std::move(file)) {}

  void add(FaultKind kind, std::string place, std::string message);
  /// Something that was parsed but is not valid.
  void add(std::string place, std::string message);
  /// Faults found elsewhere, with `place_prefix` put before their place.
  void add_all(const std::vector<Fault>& faults, const std::string& place_prefix = "");

  [[nodiscard]] bool empty() const { return faults_.empty(); }
  /// Further faults are only counted: their words need not be looked for.
  [[nodiscard]] bool full() const { return faults_.size() >= kMostFaults; }
  [[nodiscard]] std::size_t size() const { return faults_.size() + unlisted_; }
  [[nodiscard]] const std::string& file() const { return file_; }
  /// Every fault in the order found; beyond kMostFaults a last one that says how many more there are.
  [[nodiscard]] std::vector<Fault> take();

 private:
  void put(Fault fault);

  std::string file_;
  std::vector<Fault> faults_;
  std::size_t unlisted_ = 0;
};

}  // namespace halfdrop
