#include "physics/light/spectrum.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "physics/light/colour.h"
#include "tests/support/near.h"
#include "tests/support/references.h"

using halfdrop::seen_through;
using halfdrop::Spectrum;
using halfdrop::white_tile;

namespace {

/// Reads a CGATS table of the Debian package colord-data: the rows of numbers and the wavelength of the
/// first.
struct SpectralFile {
  double start_nm = 0.0;
  std::vector<std::vector<double>> rows;
};

SpectralFile read_spectral_file(const std::string& path) {
  SpectralFile file;
  std::ifstream in(path);
  bool in_data = false;
  for (std::string line; std::getline(in, line);) {
    std::istringstream words(line);
    std::string first;
    if (!in_data) {
      words >> first;
      if (first == "SPECTRAL_START_NM") {
        char quote = 0;
        if (words >> std::ws && words.peek() == '"') words >> quote;
        words >> file.start_nm;
      }
      in_data = first == "BEGIN_DATA";
      continue;
    }
    if (line.rfind("END_DATA", 0) == 0) break;
    file.rows.emplace_back();
    for (double value = 0.0; words >> value;) file.rows.back().push_back(value);
  }
  return file;
}

/// Largest difference between one of our tables, times `scale`, and a row of the file (5 nm steps both).
double worst_difference(const Spectrum& ours, double scale, const SpectralFile& file, std::size_t row) {
  const auto offset = static_cast<std::size_t>((halfdrop::kFirstWavelength_nm - file.start_nm) / 5.0 + 0.5);
  double worst = 0.0;
  for (std::size_t i = 0; i < ours.size(); ++i) {
    worst = std::max(worst, std::abs(ours[i] * scale - file.rows.at(row).at(i + offset)));
  }
  return worst;
}

const std::string kColord = "/usr/share/colord/";

}  // namespace

// Source: CIE illuminant D65 as Debian's colord-data has it, printed relative to 1 at 560 nm.
TEST_CASE("the daylight table is CIE's, number by number") {
  const SpectralFile file = read_spectral_file(kColord + "illuminant/CIE-D65.sp");
  if (!halfdrop::test::has_reference(!file.rows.empty(), "colord-data")) return;
  CHECK(worst_difference(halfdrop::d65(), 0.01, file, 0) < 1e-6);
}

// Source: CIE 1931 2-degree colour-matching functions as Debian's colord-data has them, printed to 4 to 9
// decimals.
TEST_CASE("the matching functions are CIE's, number by number") {
  const SpectralFile file = read_spectral_file(kColord + "cmf/CIE1931-2deg-XYZ.cmf");
  if (!halfdrop::test::has_reference(!file.rows.empty(), "colord-data")) return;
  CHECK(worst_difference(halfdrop::cie_x(), 1.0, file, 0) < 1e-9);
  CHECK(worst_difference(halfdrop::cie_y(), 1.0, file, 1) < 1e-9);
  CHECK(worst_difference(halfdrop::cie_z(), 1.0, file, 2) < 1e-9);
}

// Source: CIE 15: D65 has x = 0.3127, y = 0.3290 with the 1931 observer.
TEST_CASE("daylight is the white of the standard") {
  Spectrum perfect;
  perfect.fill(1.0);
  const halfdrop::Xyz white = seen_through(perfect, Spectrum{});
  const double sum = white.x + white.y + white.z;
  CHECK_NEAR(white.x / sum, 0.3127, 0.0005);
  CHECK_NEAR(white.y / sum, 0.3290, 0.0005);
  // The same tables from 360 to 830 nm, summed independently; we stop at 380 and 780.
  CHECK_NEAR(white.x, 0.950467, 0.0002);
  CHECK_NEAR(white.z, 1.088969, 0.0004);
}

TEST_CASE("a band peaks at its wavelength with epsilon times concentration and share") {
  halfdrop::Indicator indicator;
  indicator.bands = {{1, 550.0, 30.0, 3e4}};
  const Spectrum absorbance = halfdrop::absorbance_per_cm(indicator, 1e-5, {0.75, 0.25, 0.0, 0.0});
  CHECK_NEAR(absorbance[34], 3e4 * 1e-5 * 0.25, 1e-12);       // 550 nm
  CHECK_NEAR(absorbance[40], 0.075 * std::exp(-0.5), 1e-12);  // one width above, 580 nm
  CHECK_NEAR(absorbance[28], 0.075 * std::exp(-0.5), 1e-12);  // one width below, 520 nm
}

TEST_CASE("bands worked out once absorb as they do one by one") {
  halfdrop::Indicator indicator;
  indicator.bands = {{0, 433.0, 40.0, 2e4},
                     {0, 350.0, 30.0, 9e3},
                     {2, 558.0, 28.0, 5e4},
                     {halfdrop::AbsorptionBand::kEveryForm, 615.0, 35.0, 3e4, 0.4}};
  const halfdrop::IndicatorSpectra ready(indicator);
  for (const std::array<double, 4>& shares :
       {std::array{1.0, 0.0, 0.0, 0.0}, std::array{0.2, 0.3, 0.5, 0.0}, std::array{0.0, 1.0, 0.0, 0.0}}) {
    const Spectrum one_by_one = halfdrop::absorbance_per_cm(indicator, 2e-5, shares);
    const Spectrum at_once = ready.absorbance(2e-5 * 3.0, shares);
    for (std::size_t i = 0; i < one_by_one.size(); ++i) CHECK_NEAR(at_once[i], 3.0 * one_by_one[i], 1e-13);
  }
}

TEST_CASE("the colourless form of an indicator leaves the light alone") {
  halfdrop::Indicator indicator;
  indicator.bands = {{1, 550.0, 30.0, 3e4}};
  const Spectrum absorbance = halfdrop::absorbance_per_cm(indicator, 1e-5, {1.0, 0.0, 0.0, 0.0});
  for (const double value : absorbance) CHECK(value == 0.0);
}

TEST_CASE("a faint pink that shows on the tile is harder to see on the bare bench") {
  halfdrop::Indicator pink;
  pink.bands = {{1, 552.0, 25.0, 3e4}};
  const Spectrum absorbance = halfdrop::absorbance_per_cm(pink, 2e-6, {0.0, 1.0, 0.0, 0.0});
  const auto change_on = [&absorbance](const Spectrum& behind) {
    return halfdrop::ciede2000(halfdrop::to_lab(seen_through(behind, Spectrum{})),
                               halfdrop::to_lab(seen_through(behind, absorbance)));
  };
  CHECK(change_on(white_tile()) > change_on(halfdrop::bare_bench()));
  const halfdrop::Rgb seen = halfdrop::to_rgb(seen_through(white_tile(), absorbance));
  CHECK(seen.r > seen.g);
  CHECK(seen.b > seen.g);
}

// Our own assumption of a dull brown-grey bench; here only that it is dull, brown and much darker than the
// tile.
TEST_CASE("the bench top is brown-grey and much darker than the tile") {
  const halfdrop::Xyz bench = seen_through(halfdrop::bare_bench(), Spectrum{});
  const halfdrop::Xyz tile = seen_through(white_tile(), Spectrum{});
  CHECK_NEAR(tile.y, 0.90, 1e-9);
  CHECK(bench.y > 0.18);
  CHECK(bench.y < 0.25);
  const halfdrop::Lab lab = halfdrop::to_lab(bench);
  CHECK(lab.b > 3.0);
  CHECK(lab.b < 20.0);
  CHECK(lab.a > 0.0);
}
