#include "game/scenes/app.h"

#include <SFML/System/Clock.hpp>
#include <SFML/System/Err.hpp>
#include <SFML/Window/VideoMode.hpp>
#include <chrono>

#include "game/level/say.h"
#include "game/scenes/attempt_shelf.h"
#include "game/scenes/overlays.h"
#include "game/scenes/palette.h"
#include "game/scenes/shelf_files.h"
#include "game/scenes/still_picture.h"
#include "game/scenes/words.h"
#include "game/session/replay.h"

namespace halfdrop {

namespace {

constexpr unsigned kFramesPerSecond = 60;

}  // namespace

App::App(Options options, const Fonts& fonts)
    : options_(std::move(options)),
      canvas_(window_, fonts),
      fullscreen_(options_.fullscreen),
      seeds_(options_.seed) {}

void App::open_window() {
  sf::ContextSettings context;
  context.antialiasingLevel = 0;  // costs more than all the rest of a frame; edges are feathered instead
  std::streambuf* const words =
      sf::err().rdbuf(nullptr);  // says of each window that it cannot wait for the screen
  if (fullscreen_) {
    const auto& modes = sf::VideoMode::getFullscreenModes();
    window_.create(modes.empty() ? sf::VideoMode::getDesktopMode() : modes.front(), "Halfdrop",
                   sf::Style::Fullscreen, context);
  } else {
    window_.create(sf::VideoMode(options_.width, options_.height), "Halfdrop", sf::Style::Default, context);
    window_.setPosition({0, 0});
  }
  sf::err().rdbuf(words);
  window_.setFramerateLimit(kFramesPerSecond);
}

int App::run() {
  open_window();
  if (options_.level.empty()) {
    show_list();
  } else {
    show_level(find_level(options_.level));
    if (status_ != 0) return status_;
  }
  sf::Clock clock;
  while (window_.isOpen()) {
    sf::Event event{};
    while (window_.isOpen() && window_.pollEvent(event)) handle(event);
    if (window_.isOpen()) frame(static_cast<double>(clock.restart().asSeconds()));
  }
  return status_;
}

void App::handle(const sf::Event& event) {
  if (event.type == sf::Event::Closed) {
    window_.close();
    return;
  }
  if (event.type == sf::Event::KeyPressed && event.key.code == sf::Keyboard::F11) {
    if (bench_) bench_->let_go();
    fullscreen_ = !fullscreen_;
    open_window();
    return;
  }
  if (event.type == sf::Event::MouseMoved) pointer_ = canvas_.to_design(event.mouseMove.x, event.mouseMove.y);
  if (event.type == sf::Event::MouseButtonPressed)
    pointer_ = canvas_.to_design(event.mouseButton.x, event.mouseButton.y);
  if (handed_in_) {
    handed_in_->event(event, pointer_);
    return;
  }
  if (marking_.valid()) return;
  if (moment_) {
    moment_->event(event, pointer_);
  } else if (wager_) {
    wager_->page().event(event, pointer_);
  } else if (marks_) {
    marks_->event(event, pointer_);
  } else if (bench_) {
    bench_->event(event, pointer_);
  } else if (list_) {
    list_->event(event, pointer_);
  }
}

void App::frame(double wall_s) {
  if (moment_) {
    moment_->advance(wall_s);
    if (moment_->take_wish() != PlayScene::Wish::none) moment_.reset();
  } else if (wager_) {
    follow_wager();
  } else if (marks_) {
    follow_marks();
  } else if (handed_in_) {
    if (handed_in_->left()) handed_in_.reset();
  } else if (marking_.valid()) {
    if (marking_.wait_for(std::chrono::seconds(0)) == std::future_status::ready) {
      Marking done = marking_.get();
      marks_ = std::make_unique<MarksPage>(std::move(done.marked), std::move(done.earlier),
                                           options_.play.projector);
    }
  } else if (bench_) {
    bench_->advance(wall_s);
    follow_bench();
  } else if (list_) {
    follow_list();
  }
  if (window_.isOpen()) draw();
}

void App::draw() {
  window_.clear(palette::wall);
  canvas_.begin();
  if (moment_) {
    moment_->draw(canvas_);
  } else if (wager_) {
    wager_->page().draw(canvas_);
  } else if (marks_) {
    marks_->draw(canvas_);
  } else if (handed_in_) {
    handed_in_->draw(canvas_);
  } else if (bench_) {
    bench_->draw(canvas_);
    if (marking_.valid()) draw_wait(canvas_, say("app.wait"));
  } else if (list_) {
    list_->draw(canvas_);
  }
  canvas_.flush();
  window_.display();
}

void App::show_list() {
  bench_.reset();
  marks_.reset();
  wager_.reset();
  list_.emplace(LevelList::read(options_.folder));
  list_->propose(proposed_way());
}

/// A level named on the command line: its cautions come first, as from the list.
void App::show_level(const std::string& path) {
  if (is_wager(path)) return begin_wager(path);
  auto level = read_level(path);
  if (!level) {
    status_ = report(level.error());
    window_.close();
    return;
  }
  std::vector<LevelList::Entry> only;
  only.push_back({path, std::move(*level)});
  list_.emplace(std::move(only), std::vector<LevelList::Unfinished>{});
  list_->propose(proposed_way());
  list_->show_cautions(0);
}

void App::follow_list() {
  const auto wish = list_->take_wish();
  if (!wish) {
    if (!options_.level.empty() && !list_->shows_cautions()) {  // back from the cautions of a level named
      options_.level.clear();
      show_list();
    }
    return;
  }
  switch (wish->kind) {
    case LevelList::Wish::Kind::start:
      last_way_ = list_->way();
      begin(wish->path, wish->way);
      break;
    case LevelList::Wish::Kind::go_on:
      level_path_.clear();
      show(go_on_with_attempt(wish->path, options_.play));
      break;
    case LevelList::Wish::Kind::wager:
      begin_wager(wish->path);
      break;
    case LevelList::Wish::Kind::quit:
      window_.close();
      break;
  }
}

void App::follow_bench() {
  switch (bench_->take_wish()) {
    case PlayScene::Wish::level_list:
      show_list();
      break;
    case PlayScene::Wish::marks:
      begin_marking();
      break;
    default:
      break;
  }
}

void App::follow_marks() {
  switch (marks_->take_wish()) {
    case MarksPage::Wish::again: {
      const std::string path = level_path_.empty() ? find_level(attempt_->level.id) : level_path_;
      marks_.reset();
      begin(path, attempt_->way);
      break;
    }
    case MarksPage::Wish::level_list:
      show_list();
      break;
    case MarksPage::Wish::replay:
      look_at(*attempt_, marks_->replay_tick(), say("app.back.marks"));
      break;
    case MarksPage::Wish::none:
      break;
  }
}

/// As last time; else as asked for; else guided for who has never played.
Way App::proposed_way() const {
  if (last_way_) return *last_way_;
  if (options_.way) return *options_.way;
  return files_of(options_.folder, ".jsonl").empty() ? Way::guided : Way::independent;
}

void App::begin(const std::string& level_path, Way way) {
  level_path_ = level_path;
  show(begin_attempt({level_path, seeds_.next(way), options_.alias, options_.folder, way}, options_.play));
}

/// A scene that cannot be shown: said on standard error; the list of levels goes on, a level asked for does
/// not.
void App::show(Result<std::unique_ptr<PlayScene>> scene) {
  if (!scene) {
    status_ = report(scene.error());
    bench_.reset();  // one that has ended cannot be played on
    marks_.reset();
    if (!list_) return window_.close();
    status_ = 0;
    list_->tell(scene.error());
    return;
  }
  bench_ = std::move(*scene);
}

void App::begin_marking() {
  attempt_ = bench_->session().attempt();
  if (attempt_->way == Way::assessed) {
    const auto kept = read_attempt(bench_->file());
    handed_in_.emplace(attempt_->level.title, bench_->file(), kept && has_ended(kept->attempt));
  }
  marking_ = std::async(std::launch::async, [attempt = *attempt_, folder = options_.folder] {
    return Marking{mark(attempt), earlier_goes(folder, attempt)};
  });
}

void App::look_at(const Attempt& attempt, Tick tick, const std::string& back) {
  moment_ = std::make_unique<PlayScene>(replay(attempt, {}, tick).session, std::nullopt, options_.play);
  moment_->only_look(say("app.moment", {{"time", words::clock(tick)}, {"back", back}}));
}

/// From the list; where it was asked for by name and cannot be shown, nothing else can.
void App::begin_wager(const std::string& path) {
  auto play = WagerPlay::begin(path, seeds_.next(Way::independent));
  if (play) {
    wager_ = std::move(*play);
  } else if (list_) {
    list_->tell(play.error());
  } else {
    status_ = report(play.error());
    window_.close();
  }
}

void App::follow_wager() {
  const std::vector<Fault> faults = wager_->advance();
  const WagerPage::Wish wish = wager_->page().take_wish();
  if (wish == WagerPage::Wish::look)
    look_at(wager_->page().attempt(), wager_->page().look_tick(), say("app.back.paper"));
  if (wish != WagerPage::Wish::leave && faults.empty()) return;
  show_list();
  if (!faults.empty()) list_->tell(faults);
}

}  // namespace halfdrop
