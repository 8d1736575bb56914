#include "game/level/glass_keys.h"
namespace halfdrop {
namespace {

/// As far as the eye's rail beside its picture reaches down.
constexpr double kLongestScale_mm = 700.0;

constexpr NumberKey<BuretteSpec> kBurette[] = {
    {"nominal_cm3", &BuretteSpec::nominal_cm3, {10.0, 100.0}},
    {"scale_length_mm", &BuretteSpec::scale_length_mm, {100.0, kLongestScale_mm}},
    {"above_zero_cm3", &BuretteSpec::above_zero_cm3, {0.5, 20.0}},
    {"below_scale_cm3", &BuretteSpec::below_scale_cm3, {0.1, 20.0}},
    {"below_scale_mm", &BuretteSpec::below_scale_mm, {5.0, 200.0}},
    {"wet_cm3", &BuretteSpec::wet_cm3, {0.0, 1.0}},
    {"grease", &BuretteSpec::grease, {0.0, 1.0}},
    {"jet_cm3", &BuretteSpec::jet_cm3, {0.02, 1.0}},
    {"jet_length_mm", &BuretteSpec::jet_length_mm, {10.0, 200.0}},
    {"outer_half_width_mm", &BuretteSpec::outer_half_width_mm, {2.0, 20.0}},
};

constexpr NumberKey<TapSpec> kTap[] = {
    {"bore_mm", &TapSpec::bore_mm, {0.5, 5.0}},
    {"plug_mm", &TapSpec::plug_mm, {3.0, 20.0}},
    {"channel_mm", &TapSpec::channel_mm, {0.5, 20.0}},
    {"jet_bore_mm", &TapSpec::jet_bore_mm, {0.2, 2.0}},
    {"jet_narrow_mm", &TapSpec::jet_narrow_mm, {1.0, 150.0}},
    {"tip_outer_mm", &TapSpec::tip_outer_mm, {2.0, 4.0}},
    {"stiff_degrees", &TapSpec::stiff_degrees, {0.0, 20.0}},
    {"loose_degrees", &TapSpec::loose_degrees, {0.0, 20.0}},
    {"leak_cm3_min", &TapSpec::leak_cm3_min, {0.0, 2.0}},
    {"grease_in_bore", &TapSpec::grease_in_bore, {0.0, 0.9}},
};

constexpr NumberKey<FlaskSpec> kFlask[] = {
    {"base_radius_cm", &FlaskSpec::base_radius_cm, {1.0, 10.0}},
    {"neck_radius_cm", &FlaskSpec::neck_radius_cm, {0.5, 5.0}},
    {"height_cm", &FlaskSpec::height_cm, {4.0, 30.0}},
    {"neck_length_cm", &FlaskSpec::neck_length_cm, {0.5, 15.0}},
    {"capacity_cm3", &FlaskSpec::capacity_cm3, {20.0, 2000.0}},
    {"fineness", &FlaskSpec::fineness, {0.25, 2.0}},
};

constexpr NumberKey<PipetteSpec> kPipette[] = {
    {"wet_cm3", &PipetteSpec::wet_cm3, {0.0, 1.0}},
};

}  // namespace

std::span<const NumberKey<BuretteSpec>> burette_keys() { return kBurette; }
std::span<const NumberKey<TapSpec>> tap_keys() { return kTap; }
std::span<const NumberKey<FlaskSpec>> flask_keys() { return kFlask; }
std::span<const NumberKey<PipetteSpec>> pipette_keys() { return kPipette; }

}  // namespace halfdrop
