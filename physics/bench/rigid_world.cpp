#include "physics/bench/rigid_world.h"

#include <box2d/box2d.h>

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "physics/bench/bench_spec.h"
#include "physics/elementary.h"
#include "physics/flask/contents.h"
#include "physics/flask/mixing.h"

namespace halfdrop {

namespace {

constexpr int kVelocityRounds = 4;
constexpr int kPositionRounds = 2;
constexpr double kBenchHalf_cm = 200.0;
/// The beaker that stands under the jet (our own): wide enough for every drop from the tip.
constexpr double kBeakerRadius_cm = 3.0;
constexpr double kBeakerHeight_cm = 8.0;
constexpr std::uint16_t kGlassBits = 1;
constexpr std::uint16_t kDropBits = 2;

/// What a fixture is; kept as its user data.
enum class Solid : std::uintptr_t { flask_glass = 1, flask_liquid, beaker, bench };

/// Box2D counts in float; (x, height above the bench) in cm.
b2Vec2 point(double x_cm, double height_cm) {
  return {static_cast<float>(x_cm), static_cast<float>(height_cm)};
}

double grained(float value) { return std::round(static_cast<double>(value) / kFlightGrain) * kFlightGrain; }

/// The flask in outline: where it stands, how wide it is inside at a height above the bench.
class FlaskOutline {
 public:
  FlaskOutline(const BenchSpec& spec, const BenchState& state)
      : flask_(spec.flask), axis_cm_(state.hands.flask_x_cm), foot_cm_(state.hands.flask_y_cm) {
    const double depth_cm = liquid_depth_cm(flask_, flask_liquid(state.ledger).volume_cm3());
    surface_cm_ = foot_cm_ + depth_cm;
  }

  [[nodiscard]] double axis_cm() const { return axis_cm_; }
  [[nodiscard]] double foot_cm() const { return foot_cm_; }
  [[nodiscard]] double shoulder_cm() const { return foot_cm_ + flask_.height_cm - flask_.neck_length_cm; }
  [[nodiscard]] double rim_cm() const { return foot_cm_ + flask_.height_cm; }
  [[nodiscard]] double surface_cm() const { return surface_cm_; }
  [[nodiscard]] double half_width_cm(double height_cm) const {
    const double cone_cm = flask_.height_cm - flask_.neck_length_cm;
    const double share = std::clamp((height_cm - foot_cm_) / cone_cm, 0.0, 1.0);
    return flask_.base_radius_cm + (flask_.neck_radius_cm - flask_.base_radius_cm) * share;
  }
  /// True between the walls, and over the mouth.
  [[nodiscard]] bool holds(double x_cm, double height_cm) const {
    return height_cm >= foot_cm_ && std::fabs(x_cm - axis_cm_) <= half_width_cm(height_cm);
  }

 private:
  const FlaskSpec& flask_;
  double axis_cm_;
  double foot_cm_;
  double surface_cm_ = 0.0;
};

class World {
 public:
  World(const BenchSpec& spec, const BenchState& state)
      : tip_cm_(spec.tip_above_bench_cm),
        flask_(spec, state),
        world_(point(0.0, -100.0 * kGravity_m_s2)),
        ground_(world_.CreateBody(nothing_special())) {
    add_edge(point(-kBenchHalf_cm, 0.0), point(kBenchHalf_cm, 0.0), Solid::bench);
    add_flask();
    if (state.beaker_under) add_beaker();
    for (std::size_t i = 0; i < kMostFalling; ++i) {
      if (state.falling[i].flying) add_drop(i, state.falling[i]);
    }
  }

  void step() { world_.Step(static_cast<float>(kSecondsPerTick), kVelocityRounds, kPositionRounds); }

  /// Writes a drop's place back; says where it ended.
  std::optional<Account> take(std::size_t i, FallingDrop& drop) const {
    const b2Body& body = *drops_[i];
    drop.x_cm = grained(body.GetPosition().x);
    drop.fallen_cm = grained(static_cast<float>(tip_cm_) - body.GetPosition().y);
    drop.across_cm_s = grained(body.GetLinearVelocity().x);
    drop.speed_cm_s = grained(-body.GetLinearVelocity().y);
    const double height_cm = tip_cm_ - drop.fallen_cm;
    const bool inside = flask_.holds(drop.x_cm, height_cm);
    if (inside && (met(body, Solid::flask_liquid) || height_cm <= flask_.surface_cm()))
      return Account::flask_landing;
    if (inside && met(body, Solid::flask_glass)) return Account::flask_wall;
    if (met(body, Solid::beaker)) return Account::beaker;
    if (met(body, Solid::bench) || height_cm <= 0.0) return Account::bench_top;
    return std::nullopt;
  }

 private:
  static const b2BodyDef* nothing_special() {
    static const b2BodyDef kGround;
    return &kGround;
  }

  void add_edge(const b2Vec2& from, const b2Vec2& to, Solid solid) {
    b2EdgeShape shape;
    shape.SetTwoSided(from, to);
    b2FixtureDef fixture;
    fixture.shape = &shape;
    fixture.friction = 0.0F;
    fixture.userData.pointer = static_cast<std::uintptr_t>(solid);
    fixture.filter.categoryBits = kGlassBits;
    ground_->CreateFixture(&fixture);
  }

  void add_flask() {
    const double foot = flask_.foot_cm();
    const double base = flask_.half_width_cm(foot);
    const double neck = flask_.half_width_cm(flask_.rim_cm());
    for (const double side : {-1.0, 1.0}) {
      const b2Vec2 shoulder = point(flask_.axis_cm() + side * neck, flask_.shoulder_cm());
      add_edge(point(flask_.axis_cm() + side * base, foot), shoulder, Solid::flask_glass);
      add_edge(shoulder, point(flask_.axis_cm() + side * neck, flask_.rim_cm()), Solid::flask_glass);
    }
    const double surface = flask_.half_width_cm(flask_.surface_cm());
    add_edge(point(flask_.axis_cm() - surface, flask_.surface_cm()),
             point(flask_.axis_cm() + surface, flask_.surface_cm()), Solid::flask_liquid);
  }

  void add_beaker() {
    for (const double side : {-kBeakerRadius_cm, kBeakerRadius_cm}) {
      add_edge(point(side, 0.0), point(side, kBeakerHeight_cm), Solid::beaker);
    }
    add_edge(point(-kBeakerRadius_cm, 0.0), point(kBeakerRadius_cm, 0.0), Solid::beaker);
  }

  void add_drop(std::size_t i, const FallingDrop& drop) {
    b2BodyDef def;
    def.type = b2_dynamicBody;
    def.fixedRotation = true;
    def.allowSleep = false;
    def.position = point(drop.x_cm, tip_cm_ - drop.fallen_cm);
    def.linearVelocity = point(drop.across_cm_s, -drop.speed_cm_s);
    b2Body* body = world_.CreateBody(&def);
    b2CircleShape circle;
    // Box2D's edges are surrounded by a skin; without it a drop touches where it touches.
    circle.m_radius = std::max(
        static_cast<float>(drop_radius_cm(drop.liquid.volume_cm3())) - b2_polygonRadius, b2_linearSlop);
    b2FixtureDef fixture;
    fixture.shape = &circle;
    fixture.density = 1.0F;
    fixture.friction = 0.0F;
    fixture.filter.categoryBits = kDropBits;
    fixture.filter.maskBits = kGlassBits;
    body->CreateFixture(&fixture);
    drops_[i] = body;
  }

  static bool met(const b2Body& body, Solid solid) {
    for (const b2ContactEdge* edge = body.GetContactList(); edge != nullptr; edge = edge->next) {
      if (!edge->contact->IsTouching()) continue;
      const auto what = static_cast<std::uintptr_t>(solid);
      if (edge->contact->GetFixtureA()->GetUserData().pointer == what ||
          edge->contact->GetFixtureB()->GetUserData().pointer == what) {
        return true;
      }
    }
    return false;
  }

  double tip_cm_;
  FlaskOutline flask_;
  b2World world_;
  b2Body* ground_;
  std::array<b2Body*, kMostFalling> drops_{};
};

}  // namespace

double drop_radius_cm(double volume_cm3) {
  return elementary::cube_root(3.0 * std::max(volume_cm3, 0.0) / (4.0 * kPi));
}

Landings fly(const BenchSpec& spec, BenchState& state) {
  Landings landings{};
  World world(spec, state);
  world.step();
  for (std::size_t i = 0; i < kMostFalling; ++i) {
    if (state.falling[i].flying) landings[i] = world.take(i, state.falling[i]);
  }
  return landings;
}

}  // namespace halfdrop
