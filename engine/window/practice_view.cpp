#include "engine/window/practice_view.hpp"

#include <algorithm>

namespace matula::window {

namespace {

constexpr double while_made_s = 0.1;
constexpr double clock_s = 0.5;

/// A quiz after its end.
bool at_results(const PracticeView& view) {
  return view.quiz && view.quiz->finished();
}

} // namespace

bool at_practice(const App& app) {
  return app.practice && (app.practice->drill || app.practice->quiz);
}

std::string practice_screen(const App& app) {
  return app.practice->drill ? "drill" : at_results(*app.practice) ? "results" : "quiz";
}

double practice_rest_s(const App& app) {
  const PracticeView& view = *app.practice;
  const bool limit = view.quiz && !view.quiz->finished() && view.quiz->left_s();
  return view.waits ? while_made_s : limit ? clock_s : -1;
}

void run_practice(App& app, double wall_s) {
  if (app.practice && app.practice->quiz) {
    app.practice->quiz->run(wall_s);
  }
}

const bench::Scene* practice_scene(const App& app) {
  const bool shown = at_practice(app) && app.practice->scene && !app.practice->scene->vessels.empty();
  return shown && !at_results(*app.practice) ? &*app.practice->scene : nullptr;
}

render::Show practice_show(const App& app) {
  const PracticeView& view = *app.practice;
  render::Show show;
  show.in_hand = view.drill ? view.drill->in_hand() : view.quiz->in_hand();
  show.eye_mm = static_cast<double>(view.eye_mm);
  show.labels["tag:jar"] = "Jar";
  return show;
}

bool all_answered(const PracticeView& view) {
  return view.quiz && view.quiz->answered() == view.quiz->count();
}

const desk::Question* question_on_show(PracticeView& view) {
  const bool made = view.drill ? view.drill->ready() : view.quiz->ready();
  if (!made) {
    return nullptr;
  }
  const desk::Question& question = view.drill ? view.drill->question() : view.quiz->question();
  if (view.fresh) {
    view.fresh = false;
    if (question.kind == desk::Posed::Float) {
      view.view = {}; // A scale is read against white.
    }
    view.eye_mm = static_cast<float>(question.eye_mm);
    view.focus_line = question.kind == desk::Posed::Sum || question.kind == desk::Posed::Float ? 0 : -1;
  }
  return &question;
}

void renew(PracticeView& view) {
  view.reply = Reply{};
  view.fresh = true;
  view.end_wanted = false;
  view.scene.reset();
  view.beside.clear();
}

void write_reply(App& app) {
  PracticeView& view = *app.practice;
  const desk::Question* question = question_on_show(view);
  if (question == nullptr) {
    return;
  }
  const Reply& given = view.reply;
  const auto key = [](const auto& list, int at) {
    return at >= 0 ? list[static_cast<std::size_t>(at)].first : std::string();
  };
  std::vector<std::string> reply;
  switch (question->kind) {
  case desk::Posed::Tube:
    reply = {given.word >= 0 ? question->words[static_cast<std::size_t>(given.word)] : ""};
    break;
  case desk::Posed::Float:
    reply = {given.number};
    break;
  case desk::Posed::Sum:
    reply.assign(given.lines.begin(), given.lines.end());
    break;
  case desk::Posed::Delivery:
    reply = {key(question->verdicts, given.verdict), key(question->reasons, given.reason)};
    break;
  }
  if (view.drill) {
    view.trouble = view.drill->answer(reply);
    view.focus_next = 3;
    return;
  }
  view.trouble = view.quiz->answer(reply);
  if (view.trouble.empty()) {
    renew(view);
    view.focus_strip = all_answered(view) ? 3 : 0;
  }
}

void leave_practice(App& app) {
  PracticeView& view = *app.practice;
  view.drill.reset();
  view.quiz.reset();
  view.trouble.clear();
  renew(view);
  view.skills = view.room.skills();
  view.unfinished = view.room.unfinished();
  app.focus_screen = 3;
  app.message.clear();
}

} // namespace matula::window
