#include "physics/light/colour.h"

#include <algorithm>
#include <cmath>

#include "physics/elementary.h"
#include "physics/units.h"

namespace halfdrop {
namespace {

struct Observer {
  Spectrum x, y, z;  ///< D65 times the matching functions, scaled so that a perfect white has y = 1
  Xyz white;
};

Observer make_observer() {
  Observer observer{};
  double luminance = 0.0;
  for (std::size_t i = 0; i < d65().size(); ++i) luminance += d65()[i] * cie_y()[i];
  for (std::size_t i = 0; i < d65().size(); ++i) {
    const double power = d65()[i] / luminance;
    observer.white.x += observer.x[i] = power * cie_x()[i];
    observer.white.y += observer.y[i] = power * cie_y()[i];
    observer.white.z += observer.z[i] = power * cie_z()[i];
  }
  return observer;
}

const Observer& observer() {
  static const Observer instance = make_observer();
  return instance;
}

/// The matrix of IEC 61966-2-1.
Rgb srgb_of(const Xyz& c) {
  return {3.2406 * c.x - 1.5372 * c.y - 0.4986 * c.z, -0.9689 * c.x + 1.8758 * c.y + 0.0415 * c.z,
          0.0557 * c.x - 0.2040 * c.y + 1.0570 * c.z};
}

/// Solves the matrix of IEC 61966-2-1 by Cramer's rule.
Xyz inverse_of_srgb(const Rgb& c) {
  const auto det = [](const Xyz& x, const Xyz& y, const Xyz& z) {
    return x.x * (y.y * z.z - z.y * y.z) - y.x * (x.y * z.z - z.y * x.z) + z.x * (x.y * y.z - y.y * x.z);
  };
  const auto column = [](const Xyz& unit) {
    const Rgb rgb = srgb_of(unit);
    return Xyz{rgb.r, rgb.g, rgb.b};
  };
  const Xyz x = column({1, 0, 0}), y = column({0, 1, 0}), z = column({0, 0, 1}), right{c.r, c.g, c.b};
  const double whole = det(x, y, z);
  return {det(right, y, z) / whole, det(x, right, z) / whole, det(x, y, right) / whole};
}

/// How far from grey towards `component` one may go and stay within 0 to 1.
double reach(double grey, double component) {
  if (component > 1.0) return (1.0 - grey) / (component - grey);
  if (component < 0.0) return grey / (grey - component);
  return 1.0;
}

Rgb clipped(const Rgb& c) {
  const double grey = std::clamp(0.2126 * c.r + 0.7152 * c.g + 0.0722 * c.b, 0.0, 1.0);
  const double part = std::min({reach(grey, c.r), reach(grey, c.g), reach(grey, c.b)});
  const auto towards = [grey, part](double component) {
    return std::clamp(grey + part * (component - grey), 0.0, 1.0);
  };
  return {towards(c.r), towards(c.g), towards(c.b)};
}

/// CIE 15, CIELAB: cube root with a straight piece near black.
double lab_f(double ratio) {
  constexpr double kDelta = 6.0 / 29.0;
  if (ratio > kDelta * kDelta * kDelta) return elementary::cube_root(ratio);
  return ratio / (3.0 * kDelta * kDelta) + 4.0 / 29.0;
}

double radians(double degrees) { return degrees * kPi / 180.0; }
double cos_degrees(double degrees) { return std::cos(radians(degrees)); }

double hue_degrees(double a, double b) {
  if (a == 0.0 && b == 0.0) return 0.0;
  const double angle = std::atan2(b, a) * 180.0 / kPi;
  return angle < 0.0 ? angle + 360.0 : angle;
}

double seventh_power_share(double chroma) {
  const double c2 = chroma * chroma;
  const double c7 = c2 * c2 * c2 * chroma;
  constexpr double k25To7 = 6103515625.0;
  return std::sqrt(c7 / (c7 + k25To7));
}

/// Chroma and hue with a stretched as CIEDE2000 wants it.
struct Polar {
  double chroma, hue;
};

Polar polar(const Lab& lab, double stretch) {
  const double a = lab.a * stretch;
  return {std::hypot(a, lab.b), hue_degrees(a, lab.b)};
}

/// The shorter way round from one hue to the other, and the hue half way along it.
struct HuePair {
  double difference, mean;
};

HuePair compare_hues(const Polar& one, const Polar& other) {
  if (one.chroma * other.chroma == 0.0) return {0.0, one.hue + other.hue};
  double difference = other.hue - one.hue;
  double sum = one.hue + other.hue;
  if (std::abs(difference) > 180.0) {
    difference += difference > 0.0 ? -360.0 : 360.0;
    sum += sum < 360.0 ? 360.0 : -360.0;
  }
  return {difference, 0.5 * sum};
}

}  // namespace

Xyz seen_through(const Spectrum& reflectance, const Spectrum& absorbance) {
  const Observer& eye = observer();
  Xyz sum;
  for (std::size_t i = 0; i < reflectance.size(); ++i) {
    const double light =
        absorbance[i] == 0.0 ? reflectance[i] : reflectance[i] * elementary::exp10(-absorbance[i]);
    sum.x += light * eye.x[i];
    sum.y += light * eye.y[i];
    sum.z += light * eye.z[i];
  }
  return sum;
}

Lab to_lab(const Xyz& xyz) {
  const Xyz& white = observer().white;
  const double fx = lab_f(xyz.x / white.x);
  const double fy = lab_f(xyz.y / white.y);
  const double fz = lab_f(xyz.z / white.z);
  return {116.0 * fy - 16.0, 500.0 * (fx - fy), 200.0 * (fy - fz)};
}

Rgb unclipped_rgb(const Xyz& xyz) {
  const Rgb white = srgb_of(observer().white);
  const Rgb colour = srgb_of(xyz);
  return {colour.r / white.r, colour.g / white.g, colour.b / white.b};
}

Xyz xyz_of(const Rgb& linear) {
  const Rgb white = srgb_of(observer().white);
  return inverse_of_srgb({linear.r * white.r, linear.g * white.g, linear.b * white.b});
}

Rgb to_rgb(const Xyz& xyz) { return clipped(unclipped_rgb(xyz)); }

double exact_code(double linear) {
  const double c = std::clamp(linear, 0.0, 1.0);
  const double encoded =
      c <= 0.0031308 ? 12.92 * c : 1.055 * elementary::exp(elementary::log(c) / 2.4) - 0.055;
  return 255.0 * std::min(encoded, 1.0);
}

std::uint8_t encode(double linear) { return static_cast<std::uint8_t>(exact_code(linear) + 0.5); }

std::string to_hex(const Rgb& rgb) {
  constexpr char kDigits[] = "0123456789abcdef";
  std::string hex = "#";
  for (const double component : {rgb.r, rgb.g, rgb.b}) {
    const unsigned value = encode(component);
    hex += kDigits[value >> 4];
    hex += kDigits[value & 15];
  }
  return hex;
}

// Libm's functions are allowed here: a difference is shown and compared with a limit, it never enters the
// state.
double ciede2000(const Lab& one, const Lab& other) {
  const double mean_c = 0.5 * (std::hypot(one.a, one.b) + std::hypot(other.a, other.b));
  const double stretch = 1.0 + 0.5 * (1.0 - seventh_power_share(mean_c));
  const Polar p1 = polar(one, stretch);
  const Polar p2 = polar(other, stretch);
  const HuePair hue = compare_hues(p1, p2);
  const double mean_l = 0.5 * (one.l + other.l);
  const double mean_chroma = 0.5 * (p1.chroma + p2.chroma);
  const double t = 1.0 - 0.17 * cos_degrees(hue.mean - 30.0) + 0.24 * cos_degrees(2.0 * hue.mean) +
                   0.32 * cos_degrees(3.0 * hue.mean + 6.0) - 0.20 * cos_degrees(4.0 * hue.mean - 63.0);
  const double from_50 = (mean_l - 50.0) * (mean_l - 50.0);
  const double s_l = 1.0 + 0.015 * from_50 / std::sqrt(20.0 + from_50);
  const double s_c = 1.0 + 0.045 * mean_chroma;
  const double s_h = 1.0 + 0.015 * mean_chroma * t;
  const double blue = (hue.mean - 275.0) / 25.0;
  const double rotation =
      -std::sin(radians(60.0 * std::exp(-blue * blue))) * 2.0 * seventh_power_share(mean_chroma);
  const double l = (other.l - one.l) / s_l;
  const double c = (p2.chroma - p1.chroma) / s_c;
  const double h = 2.0 * std::sqrt(p1.chroma * p2.chroma) * std::sin(radians(0.5 * hue.difference)) / s_h;
  return std::sqrt(l * l + c * c + h * h + rotation * c * h);
}

}  // namespace halfdrop
