#include "game/level/shelf_names.h"

#include <algorithm>
#include <cctype>
#include <set>
#include <vector>

#include "game/level/nearest.h"

namespace halfdrop {
namespace {

template <class T>
bool is_called(const T& item, std::string_view name) {
  return item.name == name ||
         std::find(item.also_called.begin(), item.also_called.end(), name) != item.also_called.end();
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

bool same_but_for_capitals(std::string_view a, std::string_view b) {
  const auto small = [](char c) { return std::tolower(static_cast<unsigned char>(c)); };
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [&](char x, char y) { return small(x) == small(y); });
}

/// Formulas lie too close to one another for slips: of them only capitals are forgiven.
template <class T>
std::string unknown(const std::string& kind, std::string_view name, const Shelf<T>& shelf,
                    std::string_view meant_formula) {
  std::string message = "unknown " + kind + " " + in_quotes(name);
  if (!meant_formula.empty()) return message + "; did you mean " + in_quotes(meant_formula) + "?";
  std::vector<std::string_view> known;
  std::string list;
  for (const auto& [shown, shelved] : shelf) {
    known.push_back(shown);
    known.insert(known.end(), shelved.value.also_called.begin(), shelved.value.also_called.end());
    list += (list.empty() ? "" : ", ") + shown;
  }
  const std::string meant = did_you_mean(name, known);
  return message + (meant.empty() ? "; known: " + list : meant);
}

template <class T>
void check_each_name(const Shelf<T>& shelf, FaultList& faults) {
  std::set<std::string_view> taken;
  for (const auto& [name, shelved] : shelf) taken.insert(name);
  for (const auto& [name, shelved] : shelf) {
    const std::vector<std::string>& others = shelved.value.also_called;
    for (std::size_t i = 0; i < others.size(); ++i) {
      if (!taken.insert(others[i]).second)
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
