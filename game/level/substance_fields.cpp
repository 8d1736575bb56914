// Reads an entry of assets/substances.json, and an acid system wherever one stands (declared in assets.h).

#include <algorithm>
#include <cctype>

#include <nlohmann/json.hpp>

#include "game/level/assets.h"
#include "physics/chemistry/formula.h"

namespace halfdrop {
namespace {

constexpr std::size_t kLongestName = 60;
constexpr int kHighestCharge = 3;
constexpr int kHighestCount = 12;
constexpr NumberRange kPkRange{-3.0, 16.0};
constexpr NumberRange kHeatRange_kj_mol{-200.0, 200.0};
constexpr NumberRange kHeatCapacityRange_j_k_mol{-1000.0, 1000.0};
constexpr NumberRange kDensityRange_kg_m3{-100.0, 400.0};
constexpr NumberRange kSolubilityRange_mol_dm3{1e-6, 100.0};
constexpr NumberRange kPercentRange{0.0, 100.0};

/// How many of an ion or of an acid system a formula unit brings.
void read_count(Fields& fields, double& into, Need need) {
  int count = 1;
  fields.whole("count", count, 1, kHighestCount, need);
  into = count;
}

/// How many there are; 0 after a fault in their number.
std::size_t read_pks(Fields& fields, AcidSystem& system, FaultList& faults) {
  const Json* const list = fields.array("pk", 1, system.pk.size());
  if (list == nullptr) return 0;
  system.steps = static_cast<int>(list->size());
  for (std::size_t i = 0; i < list->size(); ++i) {
    const std::string place = pointer_to(fields.place_of("pk"), i);
    if (!check_number((*list)[i], kPkRange, place, faults)) continue;
    system.pk[i] = (*list)[i].get<double>();
    if (i > 0 && system.pk[i] < system.pk[i - 1])
      faults.add(place, "expected pK values in ascending order, found " + number_text(system.pk[i]) +
                            " after " + number_text(system.pk[i - 1]));
  }
  return list->size();
}

/// One number for each pK, or no list at all. Without a number of pK there is nothing to compare with.
void read_for_each_step(Fields& fields, std::string_view key, NumberRange range, std::size_t steps,
                        std::array<double, 3>& into, FaultList& faults) {
  if (steps == 0) {
    fields.any(key);
    return;
  }
  const Json* const list = fields.array(key, steps, steps, Need::optional);
  if (list == nullptr) return;
  for (std::size_t i = 0; i < steps; ++i) {
    if (check_number((*list)[i], range, pointer_to(fields.place_of(key), i), faults))
      into[i] = (*list)[i].get<double>();
  }
}

StrongIon read_ion(const Json& entry, const std::string& place, FaultList& faults) {
  StrongIon ion;
  Fields fields(entry, place, faults);
  fields.text("ion", ion.name, kLongestName);
  fields.whole("charge", ion.charge, -kHighestCharge, kHighestCharge);
  read_count(fields, ion.count, Need::required);
  fields.finish();
  if (!ion.name.empty() && !ion.name.ends_with(ion.charge > 0 ? '+' : ion.charge < 0 ? '-' : '\0'))
    faults.add(place + "/charge", "expected the charge that " + in_quotes(ion.name) + " ends with, found " +
                                      std::to_string(ion.charge));
  return ion;
}

/// "H314 1A", "H360FD": H, three figures, up to two letters, or a category after a blank.
bool is_statement(const std::string& text) {
  const auto figure = [](char c) { return c >= '0' && c <= '9'; };
  const auto letter = [](char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; };
  if (text.size() < 4 || text[0] != 'H' || !std::all_of(text.begin() + 1, text.begin() + 4, figure))
    return false;
  const std::string rest = text.substr(4);
  if (rest.starts_with(' ')) return (rest.size() == 2 || rest.size() == 3) && figure(rest[1]);
  return rest.size() <= 2 && std::all_of(rest.begin(), rest.end(), letter);
}

void read_statements(Fields& fields, Hazard& hazard, FaultList& faults) {
  constexpr std::size_t kMostStatements = 12;
  const Json* const list = fields.array("statements", 1, kMostStatements);
  if (list == nullptr) return;
  for (std::size_t i = 0; i < list->size(); ++i) {
    const std::string place = pointer_to(fields.place_of("statements"), i);
    if (!check_text((*list)[i], kLongestName, false, place, faults)) continue;
    hazard.statements.push_back((*list)[i].get<std::string>());
    if (!is_statement(hazard.statements.back()))
      faults.add(place, "expected a hazard statement such as \"H319\" or \"H314 1B\", found " +
                            in_quotes(hazard.statements.back()));
  }
}

Hazard read_hazard(const Json& entry, const std::string& place, FaultList& faults) {
  Hazard hazard;
  Fields fields(entry, place, faults);
  fields.number("from_percent", hazard.from_percent, kPercentRange);
  fields.number("below_percent", hazard.below_percent, kPercentRange, Need::optional);
  read_statements(fields, hazard, faults);
  read_source(fields);
  fields.finish();
  if (hazard.below_percent <= hazard.from_percent)
    faults.add(place + "/below_percent",
               "expected more than from_percent, found " + number_text(hazard.below_percent));
  return hazard;
}

void read_density(Fields& fields, Substance& substance, FaultList& faults) {
  const Json* const density = fields.object("density", Need::optional);
  if (density == nullptr) return;
  Fields density_fields(*density, fields.place_of("density"), faults);
  density_fields.number("rise_kg_m3", substance.density_rise_kg_m3, kDensityRange_kg_m3);
  read_source(density_fields);
  density_fields.finish();
}

/// A strength that no solution exceeds.
void read_limit(Fields& fields, std::string_view key, double& into, FaultList& faults) {
  const Json* const limit = fields.object(key, Need::optional);
  if (limit == nullptr) return;
  Fields limit_fields(*limit, fields.place_of(key), faults);
  limit_fields.number("mol_dm3", into, kSolubilityRange_mol_dm3);
  read_source(limit_fields);
  limit_fields.finish();
}

void read_limits(Fields& fields, Substance& substance, FaultList& faults) {
  read_limit(fields, "solubility", substance.solubility_mol_dm3, faults);
  read_limit(fields, "pure", substance.pure_mol_dm3, faults);
  if (fields.has("solubility") && fields.has("pure"))
    fields.fault("pure", "expected \"solubility\", or \"pure\" of a liquid that mixes freely; found both");
}

void read_formula(Fields& fields, Substance& substance) {
  fields.text("formula", substance.formula, kLongestName);
  if (substance.formula.empty()) return;
  std::string fault;
  const std::optional<double> mass = molar_mass_g_mol(substance.formula, fault);
  if (mass)
    substance.molar_mass_g_mol = *mass;
  else
    fields.fault("formula", "no formula: " + fault);
}

/// Each entry of an array by `read`.
template <class T, class Read>
void read_each(Fields& fields, std::string_view key, std::size_t most, Read read, std::vector<T>& into,
               FaultList& faults) {
  const Json* const list = fields.array(key, 0, most);
  if (list == nullptr) return;
  for (std::size_t i = 0; i < list->size(); ++i)
    into.push_back(read((*list)[i], pointer_to(fields.place_of(key), i), faults));
}

}  // namespace

AcidSystem read_acid_system(const Json& entry, const std::string& place, FaultList& faults) {
  AcidSystem system;
  Fields fields(entry, place, faults);
  std::string acid;  // for who reads the file
  fields.text("acid", acid, kLongestName, Need::optional);
  const std::size_t steps = read_pks(fields, system, faults);
  read_for_each_step(fields, "heat_kj_mol", kHeatRange_kj_mol, steps, system.heat_kj_mol, faults);
  read_for_each_step(fields, "heat_capacity_j_k_mol", kHeatCapacityRange_j_k_mol, steps,
                     system.heat_capacity_j_k_mol, faults);
  fields.whole("charge", system.protonated_charge, -kHighestCharge, kHighestCharge);
  read_count(fields, system.count, Need::optional);
  read_source(fields);
  fields.finish();
  return system;
}

Substance read_substance(const std::string& name, const Json& entry, const std::string& place,
                         FaultList& faults) {
  constexpr std::size_t kMostIons = 4, kMostSystems = 4, kMostHazards = 12;
  Substance substance;
  substance.name = name;
  Fields fields(entry, place, faults);
  read_also_called(fields, substance.also_called, faults);
  read_formula(fields, substance);
  read_each(fields, "ions", kMostIons, read_ion, substance.ions, faults);
  read_source(fields);
  read_each(fields, "systems", kMostSystems, read_acid_system, substance.systems, faults);
  read_limits(fields, substance, faults);
  read_density(fields, substance, faults);
  read_each(fields, "hazards", kMostHazards, read_hazard, substance.hazards, faults);
  fields.finish();
  if (faults.empty() && substance.ions.empty() && substance.systems.empty())
    faults.add(place, "expected ions or systems: what brings neither changes no pH");
  return substance;
}

std::string strongest_in_words(const Substance& substance) {
  if (substance.pure_mol_dm3 > 0.0)
    return "pure " + substance.name + " has about " + number_text(substance.pure_mol_dm3) + " mol/dm3";
  return substance.name + " dissolves to about " + number_text(substance.solubility_mol_dm3) +
         " mol/dm3 in water at room temperature";
}

}  // namespace halfdrop
