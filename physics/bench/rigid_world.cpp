#include "physics/bench/rigid_world.h"

#include <box2d/box2d.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <cstdint>
#include <span>

#include "physics/bench/bench_spec.h"
#include "physics/bench/clamp.h"
#include "physics/elementary.h"
#include "physics/flask/contents.h"
#include "physics/flask/liquid.h"
#include "physics/flask/outline.h"

namespace halfdrop {

namespace {

constexpr int kVelocityRounds = 4;
constexpr int kPositionRounds = 2;
constexpr double kBenchHalf_cm = 200.0;

/// What a fixture is; kept as its user data. A drop is none of them.
enum class Solid : std::uintptr_t { none, flask_glass, flask_liquid, beaker, bench };

/// What a drop touches.
class Touched {
 public:
  void add(Solid solid) { touched_[static_cast<std::size_t>(solid)] = true; }
  [[nodiscard]] bool at(Solid solid) const { return touched_[static_cast<std::size_t>(solid)]; }

 private:
  std::array<bool, 5> touched_{};
};

/// Box2D counts in float; (x, height above the bench) in cm.
b2Vec2 point(double x_cm, double height_cm) {
  return {static_cast<float>(x_cm), static_cast<float>(height_cm)};
}

double grained(double value) { return std::round(value / kFlightGrain) * kFlightGrain; }

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
    return inside_radius_cm(flask_, height_cm - foot_cm_);
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

/// A straight piece of glass, liquid's surface or bench that a drop can meet.
struct Edge {
  b2Vec2 from, to;
  Solid solid;
};

/// Some of them.
class Edges {
 public:
  void add(const Edge& edge) {
    assert(count_ < edges_.size());
    edges_[count_++] = edge;
  }
  [[nodiscard]] std::span<const Edge> all() const { return std::span(edges_).first(count_); }

 private:
  std::array<Edge, 9> edges_{};
  std::size_t count_ = 0;
};

/// Everything that a drop can meet, as it stands in this tick.
class Surroundings {
 public:
  Surroundings(const BenchSpec& spec, const BenchState& state)
      : tip_cm_(spec.tip_above_bench_cm),
        level_cm_(state.over_edge ? -kBenchHeight_cm : 0.0),
        over_edge_(state.over_edge),
        flask_(spec, state) {
    add(point(-kBenchHalf_cm, level_cm_), point(kBenchHalf_cm, level_cm_), Solid::bench);
    if (over_edge_) return;  // nothing but the floor is below the jet there
    add_flask();
    if (state.beaker_under) add_beaker();
  }

  [[nodiscard]] double tip_cm() const { return tip_cm_; }

  /// What a drop could touch on its way from one place to another.
  [[nodiscard]] Edges in_the_way(const FallingDrop& from, const FallingDrop& to) const {
    const double clear_cm = drop_radius_cm(from.liquid.volume_cm3()) + kClearance_cm;
    const auto [left, right] = std::minmax(from.x_cm, to.x_cm);
    const auto [before, after] = std::minmax(from.fallen_cm, to.fallen_cm);
    const b2Vec2 lower = point(left - clear_cm, tip_cm_ - after - clear_cm);
    const b2Vec2 upper = point(right + clear_cm, tip_cm_ - before + clear_cm);
    Edges near;
    for (const Edge& edge : edges_.all()) {
      const b2Vec2 least = b2Min(edge.from, edge.to), most = b2Max(edge.from, edge.to);
      if (least.x <= upper.x && most.x >= lower.x && least.y <= upper.y && most.y >= lower.y) near.add(edge);
    }
    return near;
  }

  /// Where a drop ended that now is at a place and touches some things; nothing while it flies on.
  [[nodiscard]] std::optional<Account> end_of(const FallingDrop& drop, const Touched& touched) const {
    const double height_cm = tip_cm_ - drop.fallen_cm;
    const bool inside = !over_edge_ && flask_.holds(drop.x_cm, height_cm);
    if (inside && (touched.at(Solid::flask_liquid) || height_cm <= flask_.surface_cm()))
      return Account::flask;
    if (inside && touched.at(Solid::flask_glass)) return Account::flask_wall;
    if (touched.at(Solid::beaker)) return Account::beaker;
    if (touched.at(Solid::bench) || height_cm <= level_cm_) return Account::bench_top;
    return std::nullopt;
  }

 private:
  /// More than the skin that Box2D puts around what it moves.
  static constexpr double kClearance_cm = 0.05;

  void add(const b2Vec2& from, const b2Vec2& to, Solid solid) { edges_.add({from, to, solid}); }

  void add_flask() {
    const double foot = flask_.foot_cm();
    const double base = flask_.half_width_cm(foot);
    const double neck = flask_.half_width_cm(flask_.rim_cm());
    for (const double side : {-1.0, 1.0}) {
      const b2Vec2 shoulder = point(flask_.axis_cm() + side * neck, flask_.shoulder_cm());
      add(point(flask_.axis_cm() + side * base, foot), shoulder, Solid::flask_glass);
      add(shoulder, point(flask_.axis_cm() + side * neck, flask_.rim_cm()), Solid::flask_glass);
    }
    const double surface = flask_.half_width_cm(flask_.surface_cm());
    add(point(flask_.axis_cm() - surface, flask_.surface_cm()),
        point(flask_.axis_cm() + surface, flask_.surface_cm()), Solid::flask_liquid);
  }

  void add_beaker() {
    for (const double side : {-kBeakerRadius_cm, kBeakerRadius_cm})
      add(point(side, 0.0), point(side, kBeakerHeight_cm), Solid::beaker);
    add(point(-kBeakerRadius_cm, 0.0), point(kBeakerRadius_cm, 0.0), Solid::beaker);
  }

  double tip_cm_;    ///< with the clamps at 0: from there a drop's fall is counted
  double level_cm_;  ///< of bench or floor
  bool over_edge_;
  FlaskOutline flask_;
  Edges edges_;
};

/// One drop among what is in its way for one tick of Box2D.
class World {
 public:
  World(double tip_cm, const Edges& near, const FallingDrop& drop)
      : tip_cm_(tip_cm), world_(point(0.0, -100.0 * kGravity_m_s2)) {
    static const b2BodyDef kStill;
    b2Body* const ground = world_.CreateBody(&kStill);
    for (const Edge& edge : near.all()) add_edge(*ground, edge);
    add_drop(drop);
    world_.Step(static_cast<float>(kSecondsPerTick), kVelocityRounds, kPositionRounds);
  }

  /// Writes the drop's place back; says what it touches.
  [[nodiscard]] Touched take(FallingDrop& drop) const {
    drop.x_cm = grained(drop_->GetPosition().x);
    drop.fallen_cm = grained(static_cast<float>(tip_cm_) - drop_->GetPosition().y);
    drop.across_cm_s = grained(drop_->GetLinearVelocity().x);
    drop.speed_cm_s = grained(-drop_->GetLinearVelocity().y);
    Touched touched;
    for (const b2ContactEdge* edge = drop_->GetContactList(); edge != nullptr; edge = edge->next) {
      if (!edge->contact->IsTouching()) continue;
      for (b2Fixture* fixture : {edge->contact->GetFixtureA(), edge->contact->GetFixtureB()})
        touched.add(static_cast<Solid>(fixture->GetUserData().pointer));
    }
    return touched;
  }

 private:
  static void add_edge(b2Body& ground, const Edge& edge) {
    b2EdgeShape shape;
    shape.SetTwoSided(edge.from, edge.to);
    b2FixtureDef fixture;
    fixture.shape = &shape;
    fixture.friction = 0.0F;
    fixture.userData.pointer = static_cast<std::uintptr_t>(edge.solid);
    ground.CreateFixture(&fixture);
  }

  void add_drop(const FallingDrop& drop) {
    b2BodyDef def;
    def.type = b2_dynamicBody;
    def.fixedRotation = true;
    def.allowSleep = false;
    def.position = point(drop.x_cm, tip_cm_ - drop.fallen_cm);
    def.linearVelocity = point(drop.across_cm_s, -drop.speed_cm_s);
    drop_ = world_.CreateBody(&def);
    b2CircleShape circle;
    // Box2D's edges are surrounded by a skin; without it a drop touches where it touches.
    circle.m_radius = std::max(
        static_cast<float>(drop_radius_cm(drop.liquid.volume_cm3())) - b2_polygonRadius, b2_linearSlop);
    b2FixtureDef fixture;
    fixture.shape = &circle;
    fixture.density = 1.0F;
    fixture.friction = 0.0F;
    drop_->CreateFixture(&fixture);
  }

  double tip_cm_;
  b2World world_;
  b2Body* drop_ = nullptr;
};

/// Level surfaces alone end a flight without a push: touched once the drop's underside has passed them.
bool all_level(const Edges& near) {
  return std::all_of(near.all().begin(), near.all().end(),
                     [](const Edge& edge) { return edge.from.y == edge.to.y; });
}

/// A tick of free fall, as Box2D counts it: first the speed, then the way.
FallingDrop freely(const FallingDrop& drop) {
  FallingDrop next = drop;
  const double speed_cm_s = drop.speed_cm_s + 100.0 * kGravity_m_s2 * kSecondsPerTick;
  next.speed_cm_s = grained(speed_cm_s);
  next.fallen_cm = grained(drop.fallen_cm + speed_cm_s * kSecondsPerTick);
  next.x_cm = grained(drop.x_cm + drop.across_cm_s * kSecondsPerTick);
  return next;
}

/// A tick of fall on to level surfaces: it ends on the first that its underside meets.
Touched settle_on(const Edges& near, double tip_cm, FallingDrop& drop) {
  const double radius_cm = drop_radius_cm(drop.liquid.volume_cm3());
  const FallingDrop next = freely(drop);
  const double before_cm = tip_cm - drop.fallen_cm - radius_cm,
               after_cm = tip_cm - next.fallen_cm - radius_cm;
  Touched touched;
  double highest_cm = after_cm;
  for (const Edge& edge : near.all()) {
    const auto level_cm = static_cast<double>(edge.from.y);
    if (level_cm < after_cm || level_cm > before_cm + kFlightGrain) continue;
    if (level_cm > highest_cm) touched = Touched{};
    highest_cm = std::max(highest_cm, level_cm);
    if (level_cm == highest_cm) touched.add(edge.solid);
  }
  drop = next;
  drop.fallen_cm = grained(tip_cm - highest_cm - radius_cm);
  return touched;
}

}  // namespace

double drop_radius_cm(double volume_cm3) {
  return elementary::cube_root(3.0 * std::max(volume_cm3, 0.0) / (4.0 * kPi));
}

Landings fly(const BenchSpec& spec, BenchState& state) {
  Landings landings{};
  const Surroundings around(spec, state);
  for (std::size_t i = 0; i < kMostFalling; ++i) {
    FallingDrop& drop = state.falling[i];
    if (!drop.flying) continue;
    Touched touched;
    const FallingDrop next = freely(drop);
    const Edges near = around.in_the_way(drop, next);
    if (near.all().empty())
      drop = next;
    else if (all_level(near))
      touched = settle_on(near, around.tip_cm(), drop);
    else
      touched = World(around.tip_cm(), near, drop).take(drop);
    landings[i] = around.end_of(drop, touched);
  }
  return landings;
}

}  // namespace halfdrop
