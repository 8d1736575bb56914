#include "game/scenes/play_scene.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "game/level/say.h"
#include "game/scenes/bench_layout.h"
#include "game/scenes/eye_picture.h"
#include "game/scenes/eye_stem.h"
#include "game/scenes/making_up_panel.h"
#include "game/scenes/overlays.h"
#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

/// Bench time a frame may let pass. A longer frame (slow machine, window dragged) slows the bench down:
/// nobody can act between two pictures, so no deed may last longer than what was seen of it.
constexpr double kLongestFrame_s = 0.125;
constexpr double kMessageStays_s = 5.0;
constexpr double kGreetingStays_s = 25.0;
constexpr Tick kSayEvery = 12;  ///< ticks between two looks for the voice
constexpr Tick kGuideLooksEvery = kTicksPerSecond / 8;

}  // namespace

PlayScene::PlayScene(Session session, std::optional<Journal> journal, const PlaySettings& settings)
    : session_(std::move(session)),
      journal_(std::move(journal)),
      settings_(settings),
      outfit_(outfit_of(session_.level())),
      on_tile_(tints_of(session_.spec(), Backdrop::white_tile)),
      on_bench_(tints_of(session_.spec(), Backdrop::bare_bench)),
      paper_(paper_of(session_, settings.projector, settings.withdrawn)) {
  session_.on_change = [this](const Change& change) {
    if (!journal_) return;
    // The journal keeps what it could not write and tries again with the next change.
    if (const auto written = journal_->add(change); !written)
      tell(say("bench.not_saved", {{"why", to_string(written.error())}}));
  };
  if (session_.way() == Way::guided && !session_.level().drill) guide_.emplace();
  look();
}

PlayScene::~PlayScene() {
  if (journal_ && !session_.ended()) session_.mark_time();
}

BenchPicture PlayScene::picture() const {
  const Level& level = session_.level();
  return {view_,
          session_.spec(),
          outfit_,
          view_.flask_on_tile ? on_tile_ : on_bench_,
          clock_s_,
          outfit_.titration ? level.titrant.label : say("bench.water_label"),
          level.sample.label,
          short_indicator_name(level.indicator),
          clock_s_ - pipette_let_run_at_s_};
}

void PlayScene::look() {
  const double held_cm3 = view_.pipette_cm3;
  view_ = view(session_, kForAPicture);
  if (held_cm3 > 0.5 && view_.pipette_cm3 < 0.5) pipette_let_run_at_s_ = clock_s_;
  things_ = things(picture());
  if (shows_making_up()) {
    const auto lines = making_up_things(outfit_.eye, settings_.projector);
    things_.insert(things_.begin(), lines.begin(), lines.end());
  }
  if (asks_for_piece()) {
    for (Thing& thing : things_) {
      if (piece_of(thing)) thing.says = say("drill.knowing.this_one");
    }
  }
  let_guide_look();
}

/// Some times a second, and whenever something was done.
void PlayScene::let_guide_look() {
  const std::size_t changes = session_.attempt().changes.size();
  const Tick now = session_.state().tick;
  if (!guide_ || (changes == guide_saw_ && now < guide_looks_at_)) return;
  guide_->see(session_, view_);
  guide_saw_ = changes;
  guide_looks_at_ = now + kGuideLooksEvery;
}

void PlayScene::tell(const std::string& words) {
  message_ = words;
  message_left_s_ = kMessageStays_s;
}

void PlayScene::say_senses() {
  const std::string line = voice_.hear(view(session_));
  if (line.empty()) return;
  const std::string guide(guided_to());
  std::printf("%s%s\n", line.c_str(), guide.empty() ? "" : (" guide=" + guide).c_str());
  std::fflush(stdout);
}

void PlayScene::advance(double wall_s) {
  clock_s_ += wall_s;
  message_left_s_ -= wall_s;
  if (paused_ || !looking_.empty() || session_.ended()) return;
  keep_turning(std::min(wall_s, kLongestFrame_s));
  owed_s_ += std::min(wall_s * settings_.time_scale, kLongestFrame_s);
  while (owed_s_ >= kSecondsPerTick && !session_.time_is_up()) {
    session_.tick();
    move_hands(grasps_.due(session_.state().tick));
    owed_s_ -= kSecondsPerTick;
    if (settings_.say && session_.state().tick % kSayEvery == 0) say_senses();
  }
  if (session_.way() == Way::assessed) mark_time();
  if (session_.time_is_up()) {
    tell(say("bench.four_hours"));
    owed_s_ = 0;
  }
  look();
}

/// What was done is done: whatever ends this program, no more than a second can be played again.
void PlayScene::mark_time() {
  const auto& changes = session_.attempt().changes;
  const Tick last = changes.empty() ? 0 : changes.back().tick;
  if (journal_ && session_.state().tick - last >= kTicksPerSecond) session_.mark_time();
}

/// F3, or the tab beside the guide's card: hides it, shows it, asks a silent one.
void PlayScene::turn_guide() {
  if (!guide_) {
    const std::string_view refused = no_help_words(session_.way());
    tell(!refused.empty()    ? std::string(refused)
         : outfit_.titration ? say("guide.none")
                             : say("guide.none_in_drill"));
    return;
  }
  guide_hidden_ = !guide_hidden_ && guide_->shown().has_value();
  if (guide_hidden_) return;
  guide_->ask();
  guide_looks_at_ = 0;
}

std::string_view PlayScene::guided_to() const {
  return guide_ && guide_->shown() && !guide_hidden_ ? guide_->shown()->id : std::string_view();
}

void PlayScene::open_method() {
  const std::string_view refused = no_help_words(session_.way());
  if (refused.empty()) {
    card_ = Card::method;
  } else {
    tell(std::string(refused));
  }
}

std::string PlayScene::foot_words() const {
  if (wordless_) return {};
  if (!looking_.empty()) return looking_;
  if (message_left_s_ > 0) return message_;
  if (paper_->editing() || paper_->area().contains(pointer_)) return {};
  if (const Thing* thing = thing_at(things_, pointer_)) return thing->says;
  if (clock_s_ > kGreetingStays_s || settings_.projector) return {};
  return session_.way() == Way::assessed ? say("hint.greeting_assessed") : say("hint.greeting");
}

/// The guide's step stays while its reason gives way to what is pointed at, or told. From the back row large
/// words would hide the flask: while it is titrated the step stands alone.
void PlayScene::draw_guide(Canvas& canvas, bool is_warning) {
  std::optional<Rect> place;
  if (guided_to().empty()) {
    draw_pill(canvas, foot_words(), is_warning, settings_.projector);
  } else {
    GuideCard card{step_with_key(*guide_->shown()), guide_->shown()->reason, is_warning, settings_.projector};
    if (is_warning || thing_at(things_, pointer_) != nullptr) card.under = foot_words();
    if (settings_.projector) {
      card.words = is_warning ? card.under : guide_->shown()->words;
      if (is_warning || view_.flask_under_jet) card.under.clear();
    }
    place = draw_guide_card(canvas, card);
  }
  guide_tab_ = draw_guide_tab(canvas, place, settings_.projector);
}

void PlayScene::draw_foot(Canvas& canvas) {
  const bool is_warning = message_left_s_ > 0 && looking_.empty();
  if (guide_ && looking_.empty() && !session_.ended()) {
    draw_guide(canvas, is_warning);
  } else {
    draw_pill(canvas, foot_words(), is_warning, settings_.projector);
  }
}

void PlayScene::draw(Canvas& canvas) {
  const BenchPicture now = picture();
  still_.draw(canvas, still_key(now), [&now](Canvas& layer) { draw_still_bench(layer, now); });
  draw_moving_bench(canvas, now);
  EyePicture::draw(canvas, outfit_.eye, view_, session_.spec());
  if (looks_at_stem(view_.pipette)) draw_eye_stem(canvas, outfit_.eye, view_, session_.spec());
  if (shows_making_up()) draw_making_up(canvas, outfit_.eye, view_, session_.spec(), settings_.projector);
  canvas.flush();
  paper_->draw(canvas, session_);
  canvas.flush();
  draw_foot(canvas);
  if (card_ == Card::keys) draw_help_card(canvas, outfit_);
  if (card_ == Card::method) draw_method_card(canvas, session_.level().method);
  if (paused_) draw_pause(canvas, pause_choice_);
  canvas.flush();
}

std::vector<std::pair<std::string, Rect>> PlayScene::places() const {
  std::vector<std::pair<std::string, Rect>> all;
  for (const Thing& thing : things_) all.emplace_back(thing.name, thing.rect);
  if (guide_) all.emplace_back("guide", guide_tab_);
  const auto paper = paper_->places();
  all.insert(all.end(), paper.begin(), paper.end());
  for (const PauseButton& button : pause_buttons()) all.emplace_back("pause/" + button.name, button.rect);
  return all;
}

}  // namespace halfdrop
