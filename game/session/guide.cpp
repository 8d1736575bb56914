#include "game/session/guide.h"

#include <algorithm>

#include "game/session/guide_stages.h"

namespace halfdrop {

namespace {

constexpr int kShownOftenEnough = 2;

bool open_now(const GuideStep& step, const GuideFacts& facts) { return step.due(facts) && !step.done(facts); }

/// A deed or a writing that belongs to a step; hands may always move.
bool serves(const GuideStep& step, const Change& change) {
  if (const Deed* deed = std::get_if<Deed>(&change.what))
    return step.deed == *deed || step.other_deed == *deed;
  const Writing* writing = std::get_if<Writing>(&change.what);
  return writing != nullptr && !step.cells.empty() && writing->cell.find(step.cells) != std::string::npos;
}

bool is_hands(const Change& change) { return std::holds_alternative<HandsChange>(change.what); }

/// Liquid moves, or the step is to wait.
bool goes_forward(const GuideStep& step, const GuideFacts& facts) {
  return facts.seen.drops_per_s > 0.0 || facts.hands.pour > 0.0 || facts.hands.valve != 0.0 ||
         facts.hands.tip > 0.0 || facts.hands.fill > 0.0 || step.id == "wait" || step.id == "pipette-drain";
}

/// A run's endpoint, the second one apart.
std::string endpoint_name(const GuideFacts& facts) {
  return facts.run + (second_endpoint_due(facts) ? ", second" : "");
}

}  // namespace

std::span<const GuideStep> guide_steps() {
  static const std::vector<GuideStep> steps = [] {
    std::vector<GuideStep> all;
    for (const auto part : {guide::steps_before_a_run(), guide::steps_with_pipette(), guide::steps_of_a_run(),
                            guide::steps_on_paper()})
      all.insert(all.end(), part.begin(), part.end());
    return all;
  }();
  return steps;
}

const GuideStep* next_step(const GuideFacts& facts) {
  const auto steps = guide_steps();
  const auto found =
      std::find_if(steps.begin(), steps.end(), [&](const GuideStep& step) { return open_now(step, facts); });
  return found == steps.end() ? nullptr : &*found;
}

bool Guide::knows(std::string_view step) const {
  const auto found = memory_.find(step);
  return found != memory_.end() && found->second.known;
}

/// Once lasted is enough: carbon dioxide takes it away again, and nothing more is to be added for that.
void Guide::watch_colour(GuideFacts& facts) {
  if (facts.hands.tap > 0.0 || !guide::running(facts)) lasted_in_.clear();
  const bool stands = guide::running(facts) && facts.seen.flask_under_jet && shows_change(facts);
  if (stands && facts.undisturbed_s >= kColourLasts_s) lasted_in_ = endpoint_name(facts);
  facts.colour_lasted = !facts.run.empty() && lasted_in_ == endpoint_name(facts);
}

/// A step that was open at the last look and is so no longer, because it was done.
void Guide::learn(const GuideFacts& facts, std::span<const Change> fresh) {
  for (const GuideStep& step : guide_steps()) {
    Memory& memory = memory_[step.id];
    const bool open = open_now(step, facts);
    const auto served = [&] {
      return std::any_of(fresh.begin(), fresh.end(),
                         [&](const Change& change) { return serves(step, change); });
    };
    if (memory.open && !open && (step.done(facts) || served())) {
      const bool was_shown = shown_ && shown_->id == step.id;
      if (was_shown) ++memory.done_shown;
      memory.known = memory.known || !was_shown || memory.done_shown >= kShownOftenEnough;
    }
    memory.open = open;
  }
}

void Guide::watch_progress(const GuideFacts& facts, const GuideStep* step, std::span<const Change> fresh) {
  const double now_s = facts.seen.time_s;
  const std::string_view id = step ? step->id : std::string_view();
  if (id != next_) {
    next_ = id;
    called_ = false;
    forward_at_s_ = now_s;
    return;
  }
  if (!step) return;
  for (const Change& change : fresh) {
    if (is_hands(change)) continue;
    if (serves(*step, change)) forward_at_s_ = now_s;
    called_ = called_ || !serves(*step, change);
  }
  if (goes_forward(*step, facts)) forward_at_s_ = now_s;
  if (now_s - forward_at_s_ >= kStuck_s) called_ = true;
}

void Guide::see(const Session& session, const View& seen) {
  GuideFacts facts = guide_facts(session, seen);
  const auto& changes = session.attempt().changes;
  const auto fresh = std::span(changes).subspan(std::min(changes_seen_, changes.size()));
  changes_seen_ = changes.size();
  watch_colour(facts);
  learn(facts, fresh);
  const GuideStep* const step = next_step(facts);
  watch_progress(facts, step, fresh);
  shown_.reset();
  if (step && (called_ || !memory_[step->id].known))
    shown_ = Shown{step->id, step->words(facts), step->reason(facts)};
}

}  // namespace halfdrop
