#pragma once
// The shelf of chemicals: assets/substances.json and assets/indicators.json. Every number there has its
// source in a "source" beside it. Substances are what a bottle brings; indicators also absorb light.

#include <map>
#include <string>
#include <vector>

#include "game/level/fields.h"
#include "physics/chemistry/acid_base.h"
#include "physics/chemistry/indicator.h"

namespace halfdrop {

/// What was read, and its text (compact JSON), which goes into attempts.
template <class T>
struct Shelved {
  T value;
  std::string json;
};

/// By the name that is shown.
template <class T>
using Shelf = std::map<std::string, Shelved<T>, std::less<>>;

struct Assets {
  Shelf<Substance> substances;
  Shelf<Indicator> indicators;
};

inline constexpr std::size_t kMostAssetBytes = std::size_t{1} << 20;

/// The "source" that stands beside a number; for who reads the file.
void read_source(Fields& fields);

/// The "also_called" of an entry that has one.
void read_also_called(Fields& fields, std::vector<std::string>& into, FaultList& faults);

/// One entry; faults at `place`. With a fault the value is not to be used.
[[nodiscard]] AcidSystem read_acid_system(const Json& entry, const std::string& place, FaultList& faults);
[[nodiscard]] Substance read_substance(const std::string& name, const Json& entry, const std::string& place,
                                       FaultList& faults);
[[nodiscard]] Indicator read_indicator(const std::string& name, const Json& entry, const std::string& place,
                                       FaultList& faults);

/// "benzoic acid dissolves to about 0.028 mol/dm3 in water at room temperature", "pure ethanoic acid has
/// about 17.5 mol/dm3". Precondition: there is a limit.
[[nodiscard]] std::string strongest_in_words(const Substance& substance);

/// Both files of a data folder's assets/; every fault at once, each with its own file.
[[nodiscard]] Result<Assets> read_assets(const std::string& folder);

}  // namespace halfdrop
