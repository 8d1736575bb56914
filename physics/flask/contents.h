#pragma once
// The flask's liquid seen as chemistry: pH, colour, equivalence, first visible change. A view; never state.

#include <optional>

#include "physics/bench/bench_spec.h"
#include "physics/bench/ledger.h"
#include "physics/light/colour.h"

namespace halfdrop {

// What needs chemistry or colour needs a bench that is settled, with the liquids that it has now.

[[nodiscard]] const SolverOptions& solver_options(const BenchSpec& spec);
/// Precondition: the liquid is not empty.
[[nodiscard]] double mol_dm3(const Parcel& liquid, Component component);
/// The same with only the carbonate that sample and titrant are made of: nothing from air, nothing lost to
/// it.
[[nodiscard]] Parcel without_carbon_dioxide(const BenchSpec& spec, Parcel liquid);

/// Whether carbon dioxide counts as it stands, or as it will once all of it has met water: what a colour that
/// lasts has to reckon with.
enum class Hydration { as_it_stands, complete };

/// Open surface of liquid standing in the flask, cm2.
[[nodiscard]] double surface_cm2(const FlaskSpec& flask, double volume_cm3);
/// Depth of liquid standing in the flask, cm (cone; meniscus left out).
[[nodiscard]] double liquid_depth_cm(const FlaskSpec& flask, double volume_cm3);

enum class Backdrop { white_tile, bare_bench };

/// Equilibrium of a parcel of flask liquid, with activity. Its carbon dioxide is no acid until it has met
/// water (gas_exchange.h).
[[nodiscard]] Equilibrium equilibrium_of(const BenchSpec& spec, const Parcel& liquid,
                                         Hydration hydration = Hydration::as_it_stands);
/// The same to 1e-9 in pH, and quicker, started from the equilibrium of a liquid much like it.
[[nodiscard]] Equilibrium equilibrium_of(const BenchSpec& spec, const Parcel& liquid, Hydration hydration,
                                         const Equilibrium& near);
/// Share of each form of an indicator at the equilibrium of a parcel.
[[nodiscard]] FormShares indicator_forms(const BenchSpec& spec, const Equilibrium& there,
                                         Solute indicator = Solute::indicator);
/// Colour of a parcel seen through `path_cm` of it against a backdrop.
[[nodiscard]] Xyz colour_of(const BenchSpec& spec, const Parcel& liquid, double path_cm, Backdrop backdrop,
                            Hydration hydration = Hydration::as_it_stands);
/// Light enters through the liquid, meets what the flask stands on and comes back: twice the depth.
[[nodiscard]] double sight_path_cm(const FlaskSpec& flask, double volume_cm3);

/// CIEDE2000 at which a viewer first sees the change against the same flask before any titrant. Our choice:
/// 3, about three just-noticeable differences, for a colour that is not seen beside its reference.
inline constexpr double kFirstVisibleChange = 3.0;

/// The endpoint that a flask's liquid is on its way to: the second one as soon as its indicator is in.
[[nodiscard]] Endpoint endpoint_due(const BenchSpec& spec, const Parcel& liquid);
/// The same liquid as its change begins: without titrant; of a second endpoint, with the titrant of half-way
/// from the first to it, and without the first one's indicator, whose last trace goes meanwhile.
[[nodiscard]] Parcel before_change(const BenchSpec& spec, const Parcel& liquid, Endpoint endpoint);

/// How far a flask's mixed liquid is, in CIEDE2000, from its colour before the change, on its tile.
[[nodiscard]] double visible_change(const BenchSpec& spec, const Parcel& liquid,
                                    Hydration hydration = Hydration::as_it_stands,
                                    Endpoint endpoint = Endpoint::first);

/// The same liquid with the titrant of 10 cm3 past equivalence in it, but of no more than half-way to a
/// second endpoint: its colour is what the change leads to.
[[nodiscard]] Parcel far_past_endpoint(const BenchSpec& spec, const Parcel& liquid,
                                       Endpoint endpoint = Endpoint::first);

/// Whether the mixed liquid shows its endpoint on its tile: a colour that comes is kFirstVisibleChange off
/// the colour before, of one that goes no more than that is left.
[[nodiscard]] bool shows_endpoint(const BenchSpec& spec, const Parcel& liquid,
                                  Endpoint endpoint = Endpoint::first);

/// Titrant (cm3 of c = breakdown_mol_dm3) past equivalence from which on this flask shows its endpoint,
/// closed to air and its carbon dioxide at equilibrium. Negative: before equivalence. Found to 1e-10 cm3;
/// volume and indicator as they are in `liquid`. Nothing when it shows none within 10 cm3 past equivalence
/// (no indicator, say), or within half the way to the other endpoint.
[[nodiscard]] std::optional<double> first_visible_change_cm3(const BenchSpec& spec, const Parcel& liquid,
                                                             Endpoint endpoint = Endpoint::first);

/// Titrant past equivalence in the liquid, mol (negative: analyte left).
[[nodiscard]] double excess_titrant_mol(const BenchSpec& spec, const Parcel& liquid,
                                        Endpoint endpoint = Endpoint::first);

}  // namespace halfdrop
