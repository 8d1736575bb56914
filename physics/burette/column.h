#pragma once
// Where the meniscus stands for a volume of liquid in the tube, and back.

namespace halfdrop {

struct BuretteSpec;

/// What the burette truly delivers from the zero mark to mark `reading_cm3` (negative above zero), scale
/// error included, when used as it was calibrated (wall_film.h).
[[nodiscard]] double true_volume_cm3(const BuretteSpec& burette, double reading_cm3);
/// Room of the tube between the same marks: the film that the scale allows for on top.
[[nodiscard]] double tube_volume_cm3(const BuretteSpec& burette, double reading_cm3);
/// What the printed scale would say at the meniscus' lowest point; above zero negative, below the last mark
/// more than nominal (scale continued).
[[nodiscard]] double scale_reading_cm3(const BuretteSpec& burette, double column_cm3);
/// Liquid in the tube when the meniscus stands at a mark.
[[nodiscard]] double column_volume_cm3(const BuretteSpec& burette, double reading_cm3);
/// Meniscus above the jet's tip.
[[nodiscard]] double head_mm(const BuretteSpec& burette, double column_cm3);
/// Room from tap to rim.
[[nodiscard]] double column_capacity_cm3(const BuretteSpec& burette);

}  // namespace halfdrop
