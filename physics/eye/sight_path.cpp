#include "physics/eye/sight_path.h"

#include <algorithm>
#include <cmath>

namespace halfdrop {

namespace {

constexpr int kMostTurns = 16;
constexpr int kHalvings = 26;  // of at most a bore's width: to 1e-6 mm
constexpr double kNone = -1.0;
constexpr double kClear_mm = 1e-9;  ///< a ray that has just left a surface has left it

Vector along(const SightRay& ray, double by_mm) {
  return {ray.from.x + by_mm * ray.towards.x, ray.from.y + by_mm * ray.towards.y,
          ray.from.z + by_mm * ray.towards.z};
}

double dot(const Vector& a, const Vector& b) { return a.x * b.x + a.y * b.y + a.z * b.z; }

Vector mirrored(const Vector& way, const Vector& normal) {
  const double twice = 2.0 * dot(way, normal);
  return {way.x - twice * normal.x, way.y - twice * normal.y, way.z - twice * normal.z};
}

/// Snell: `normal` of length 1 on either side, `ratio` the index left over the index entered. None: all
/// mirrored.
std::optional<Vector> refracted(const Vector& way, Vector normal, double ratio) {
  double against = -dot(way, normal);
  if (against < 0.0) {
    normal = {-normal.x, -normal.y, -normal.z};
    against = -against;
  }
  const double beyond = 1.0 - ratio * ratio * (1.0 - against * against);
  if (beyond < 0.0) return std::nullopt;
  const double by = ratio * against - std::sqrt(beyond);
  return Vector{ratio * way.x + by * normal.x, ratio * way.y + by * normal.y, ratio * way.z + by * normal.z};
}

struct Crossing {
  double near_mm = kNone, far_mm = kNone;
};
/// Where a ray crosses an upright round wall; kNone where it does not.
Crossing crossing(const SightRay& ray, double radius_mm) {
  const Vector& p = ray.from;
  const Vector& d = ray.towards;
  const double a = d.x * d.x + d.z * d.z, half_b = p.x * d.x + p.z * d.z;
  const double under = half_b * half_b - a * (p.x * p.x + p.z * p.z - radius_mm * radius_mm);
  if (under <= 0.0 || a <= 0.0) return {};
  const double root = std::sqrt(under);
  return {(-half_b - root) / a, (-half_b + root) / a};
}

Vector wall_normal(const Vector& at) {
  const double length = std::sqrt(at.x * at.x + at.z * at.z);
  return {at.x / length, 0.0, at.z / length};
}

/// Where the liquid's surface meets the wall.
double contact_mm(const SightGeometry& sight, const EyeLook& look) {
  return look.bottom_mm + look.climb * sight.meniscus.rise_mm();
}

/// The liquid's surface along a ray inside the bore.
class SurfaceAlong {
 public:
  SurfaceAlong(const SightGeometry& sight, const EyeLook& look, const SightRay& ray, double length_mm)
      : sight_(sight), look_(look), ray_(ray), length_mm_(length_mm) {}

  /// Of the ray under the surface: convex along the ray.
  [[nodiscard]] double depth_mm(double at_mm) const {
    const Vector p = along(ray_, at_mm);
    return look_.bottom_mm + look_.climb * sight_.meniscus.height_mm(radius(p)) - p.y;
  }
  /// Where the ray comes nearest to it from below, or is highest over it from above.
  [[nodiscard]] double shallowest_mm() const {
    return halved(0.0, length_mm_, [&](double at_mm) { return !nears(at_mm); });
  }
  /// Where a ray in the liquid breaks through, or kNone.
  [[nodiscard]] double way_out_mm() const {
    if (highest_mm() < look_.bottom_mm) return kNone;
    const double turn = shallowest_mm();
    if (depth_mm(turn) > -kClear_mm || depth_mm(0.0) < kClear_mm) return kNone;
    return halved(0.0, turn, [&](double at_mm) { return depth_mm(at_mm) < 0.0; });
  }
  /// Where a ray in the air dives in, or kNone.
  [[nodiscard]] double way_in_mm() const {
    if (along(ray_, length_mm_).y > contact_mm(sight_, look_)) return kNone;
    if (depth_mm(length_mm_) < kClear_mm) return kNone;
    return halved(shallowest_mm(), length_mm_, [&](double at_mm) { return depth_mm(at_mm) > 0.0; });
  }
  [[nodiscard]] Vector normal(const Vector& at) const {
    const double r = radius(at);
    const double sine = sight_.meniscus.sine(r);
    const double cosine = std::sqrt(std::max(0.0, 1.0 - sine * sine));
    const double up = look_.climb * sine;
    const double length = std::sqrt(up * up + cosine * cosine);
    const double outwards = r > kClear_mm && length > 0.0 ? -up / (length * r) : 0.0;
    return {outwards * at.x, length > 0.0 ? cosine / length : 1.0, outwards * at.z};
  }

 private:
  [[nodiscard]] double highest_mm() const { return std::max(ray_.from.y, along(ray_, length_mm_).y); }
  static double radius(const Vector& p) { return std::sqrt(p.x * p.x + p.z * p.z); }
  template <typename Beyond>
  static double halved(double from, double to, const Beyond& beyond) {
    for (int i = 0; i < kHalvings; ++i) {
      const double middle = 0.5 * (from + to);
      (beyond(middle) ? to : from) = middle;
    }
    return 0.5 * (from + to);
  }
  /// The surface comes nearer along the ray.
  [[nodiscard]] bool nears(double at_mm) const {
    const Vector p = along(ray_, at_mm);
    const double r = radius(p), sine = sight_.meniscus.sine(r);
    const double cosine = std::sqrt(std::max(0.0, 1.0 - sine * sine));
    const double outwards = r > 0.0 ? (p.x * ray_.towards.x + p.z * ray_.towards.z) / r : 0.0;
    return look_.climb * sine * outwards < ray_.towards.y * cosine;
  }

  const SightGeometry& sight_;
  const EyeLook& look_;
  const SightRay& ray_;
  double length_mm_;
};

/// A sight line on its way, from where it has entered the front wall.
class Walk {
 public:
  Walk(const SightGeometry& sight, const EyeLook& look, const SightRay& in_glass)
      : sight_(sight), look_(look), ray_(in_glass) {}

  SightEnd end() {
    for (int i = 0; i < kMostTurns && !end_.lost; ++i) {
      if (where_ == Where::glass ? leaves_glass() : crosses_bore()) {
        end_.out = ray_;
        return end_;
      }
    }
    end_.lost = true;
    end_.out = ray_;
    return end_;
  }

 private:
  enum class Where { glass, air, liquid };

  [[nodiscard]] double index(Where where) const {
    if (where == Where::glass) return sight_.glass_index;
    return where == Where::liquid ? sight_.liquid_index : 1.0;
  }
  void meet_first(SightMeets what) {
    if (end_.meets == SightMeets::beside) end_.meets = what;
  }
  /// Through a boundary into `into`, or mirrored back; true when through.
  bool pass(const Vector& at, const Vector& normal, double ratio) {
    const auto way = refracted(ray_.towards, normal, ratio);
    if (!way) end_.turned = true;
    ray_ = {at, way ? *way : mirrored(ray_.towards, normal)};
    return way.has_value();
  }
  /// True when the sight line has left the tube.
  bool leaves_glass() {
    const double inner = crossing(ray_, sight_.bore_mm).near_mm;
    if (inner > kClear_mm) {
      const Vector at = along(ray_, inner);
      const Where into = at.y < contact_mm(sight_, look_) ? Where::liquid : Where::air;
      if (pass(at, wall_normal(at), sight_.glass_index / index(into))) where_ = into;
      return false;
    }
    meet_first(SightMeets::wall_only);
    const Vector at = along(ray_, std::max(0.0, crossing(ray_, sight_.outer_mm).far_mm));
    return pass(at, wall_normal(at), sight_.glass_index);
  }
  bool crosses_bore() {
    const double wall_mm = std::max(0.0, crossing(ray_, sight_.bore_mm).far_mm);
    const SurfaceAlong surface(sight_, look_, ray_, wall_mm);
    const bool wet = where_ == Where::liquid;
    const double break_mm = wet ? surface.way_out_mm() : surface.way_in_mm();
    if (break_mm != kNone) {
      meet_first(wet ? SightMeets::surface : SightMeets::air);
      end_.turned = true;
      const Vector at = along(ray_, break_mm);
      if (pass(at, surface.normal(at), wet ? sight_.liquid_index : 1.0 / sight_.liquid_index))
        where_ = wet ? Where::air : Where::liquid;
      return false;
    }
    meet_first(wet ? SightMeets::liquid : SightMeets::air);
    const Vector at = along(ray_, wall_mm);
    // Upright walls keep index times rise: as steep as this it never comes out, nor up to the surface again.
    end_.lost = wet && sight_.liquid_index * std::fabs(ray_.towards.y) >= 1.0;
    if (pass(at, wall_normal(at), index(where_) / sight_.glass_index)) where_ = Where::glass;
    return false;
  }

  const SightGeometry& sight_;
  const EyeLook& look_;
  SightRay ray_;
  Where where_ = Where::glass;
  SightEnd end_;
};

std::optional<SightRay> ray_in_glass(const SightGeometry& sight, const SightRay& from_eye) {
  const double front = crossing(from_eye, sight.outer_mm).near_mm;
  if (front <= 0.0) return std::nullopt;
  const Vector at = along(from_eye, front);
  const auto way = refracted(from_eye.towards, wall_normal(at), 1.0 / sight.glass_index);
  return SightRay{at, way.value_or(from_eye.towards)};
}

}  // namespace

EyeLook look_at(const SightGeometry& sight, double eye_mm, double reading_cm3) {
  const double bottom_mm = std::min(sight.rim_mm, -sight.mm_per_cm3 * reading_cm3);
  const double rise_mm = sight.meniscus.rise_mm();
  const double climb = rise_mm > 0.0 ? std::min(1.0, (sight.rim_mm - bottom_mm) / rise_mm) : 0.0;
  return {eye_mm, bottom_mm, climb};
}

EyeLook look_at_empty(double eye_mm) { return {eye_mm, -1e6, 1.0}; }

SightRay sight_ray(const SightGeometry& sight, double eye_mm, double x_mm, double y_mm) {
  const double d = sight.eye_distance_mm, up = y_mm - eye_mm;
  const double length = std::sqrt(d * d + x_mm * x_mm + up * up);
  return {{0.0, eye_mm, -d - sight.outer_mm}, {x_mm / length, up / length, d / length}};
}

std::optional<SightRay> ray_in_bore(const SightGeometry& sight, const SightRay& from_eye,
                                    double medium_index) {
  const auto in_glass = ray_in_glass(sight, from_eye);
  if (!in_glass) return std::nullopt;
  const double inner = crossing(*in_glass, sight.bore_mm).near_mm;
  if (inner < 0.0) return std::nullopt;
  const Vector at = along(*in_glass, inner);
  const auto way = refracted(in_glass->towards, wall_normal(at), sight.glass_index / medium_index);
  if (!way) return std::nullopt;
  return SightRay{at, *way};
}

double least_depth_mm(const SightGeometry& sight, const EyeLook& look, const SightRay& in_bore) {
  const double length_mm = std::max(0.0, crossing(in_bore, sight.bore_mm).far_mm);
  const SurfaceAlong surface(sight, look, in_bore, length_mm);
  return surface.depth_mm(surface.shallowest_mm());
}

SightEnd follow(const SightGeometry& sight, const EyeLook& look, double x_mm, double y_mm) {
  const SightRay from_eye = sight_ray(sight, look.eye_mm, x_mm, y_mm);
  const auto in_glass = ray_in_glass(sight, from_eye);
  if (!in_glass) return SightEnd{SightMeets::beside, from_eye, false, false};
  return Walk(sight, look, *in_glass).end();
}

}  // namespace halfdrop
