#include "game/level/shelf_names.h"

#include <algorithm>
#include <cctype>
#include <set>
#include <vector>

#include "game/level/nearest.h"

namespace halfdrop {
namespace {

std::string without_capitals(std::string_view name) {
  std::string small(name);
  for (char& letter : small) letter = static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
  return small;
}

bool same_but_for_capitals(std::string_view a, std::string_view b) {
  return without_capitals(a) == without_capitals(b);
}

/// Capitals make no other name.
template <class T>
bool is_called(const T& item, std::string_view name) {
  const auto same = [&](const std::string& own) { return same_but_for_capitals(own, name); };
  return same(item.name) || std::any_of(item.also_called.begin(), item.also_called.end(), same);
}

/// The only item that fits; null where none does, or several do.
template <class T, class Fits>
const Shelved<T>* only_one(const Shelf<T>& shelf, Fits fits) {
  const Shelved<T>* found = nullptr;
  for (const auto& [name, shelved] : shelf) {
    if (!fits(shelved.value)) continue;
    if (found != nullptr) return nullptr;
    found = &shelved;
  }
  return found;
}

/// How unlike two names are, 0 to 1: their edit distance in lengths of the longer.
double unlikeness(std::string_view a, std::string_view b) {
  const double longer = static_cast<double>(std::max<std::size_t>({a.size(), b.size(), 1}));
  return static_cast<double>(edit_distance(without_capitals(a), without_capitals(b))) / longer;
}

/// What the shelf shows, by the most like of its names.
template <class T>
std::string nearest_first(std::string_view name, const Shelf<T>& shelf) {
  std::vector<std::pair<double, std::string>> known;
  for (const auto& [shown, shelved] : shelf) {
    double least = unlikeness(name, shown);
    for (const std::string& other : shelved.value.also_called)
      least = std::min(least, unlikeness(name, other));
    known.emplace_back(least, shown);
  }
  std::sort(known.begin(), known.end());
  std::string list;
  for (const auto& [unlike, shown] : known) list += (list.empty() ? "" : ", ") + shown;
  return list;
}

/// Formulas lie too close to one another for slips: of them only capitals are forgiven.
template <class T>
std::string unknown(const std::string& kind, std::string_view name, const Shelf<T>& shelf,
                    std::string_view meant_formula) {
  const std::string message = "unknown " + kind + " " + in_quotes(name);
  if (!meant_formula.empty()) return message + "; did you mean " + in_quotes(meant_formula) + "?";
  std::vector<std::string_view> known;
  for (const auto& [shown, shelved] : shelf) {
    known.push_back(shown);
    known.insert(known.end(), shelved.value.also_called.begin(), shelved.value.also_called.end());
  }
  const std::string meant = did_you_mean(name, known);
  if (!meant.empty()) return message + meant;
  const std::string small_meant = did_you_mean(without_capitals(name), known);
  return message +
         (small_meant.empty() ? "; known, nearest first: " + nearest_first(name, shelf) : small_meant);
}

template <class T>
void check_each_name(const Shelf<T>& shelf, FaultList& faults) {
  std::set<std::string> taken;
  for (const auto& [name, shelved] : shelf) taken.insert(without_capitals(name));
  for (const auto& [name, shelved] : shelf) {
    const std::vector<std::string>& others = shelved.value.also_called;
    for (std::size_t i = 0; i < others.size(); ++i) {
      if (!taken.insert(without_capitals(others[i])).second)
        faults.add(pointer_to(pointer_to("", name) + "/also_called", i),
                   "expected a name that nothing else has, found " + in_quotes(others[i]));
    }
  }
}

}  // namespace

const Shelved<Substance>* find_on(const Shelf<Substance>& shelf, std::string_view name) {
  const auto called = [&](const Substance& substance) { return is_called(substance, name); };
  if (const auto* const found = only_one<Substance>(shelf, called)) return found;
  return only_one<Substance>(shelf, [&](const Substance& substance) { return substance.formula == name; });
}

const Shelved<Indicator>* find_on(const Shelf<Indicator>& shelf, std::string_view name) {
  return only_one<Indicator>(shelf, [&](const Indicator& indicator) { return is_called(indicator, name); });
}

std::string unknown_on(const Shelf<Substance>& shelf, std::string_view name) {
  const auto* const meant = only_one<Substance>(
      shelf, [&](const Substance& substance) { return same_but_for_capitals(substance.formula, name); });
  return unknown("substance", name, shelf,
                 meant == nullptr ? std::string_view() : std::string_view(meant->value.formula));
}

std::string unknown_on(const Shelf<Indicator>& shelf, std::string_view name) {
  return unknown("indicator", name, shelf, {});
}

void check_names(const Shelf<Substance>& shelf, FaultList& faults) { check_each_name(shelf, faults); }
void check_names(const Shelf<Indicator>& shelf, FaultList& faults) { check_each_name(shelf, faults); }

}  // namespace halfdrop
