#include "engine/desk/remember.hpp"
#include "engine/window/exam_view.hpp"
#include "engine/window/fonts.hpp"
#include "engine/window/group.hpp"
#include "engine/window/practice_view.hpp"
#include "engine/window/progress_view.hpp"

#include <fmt/format.h>
#include <imgui.h>

#include <chrono>
#include <cstdlib>

namespace matula::window {

namespace {

/// Reads what practice needs, once; false with the reason in the message.
bool enter_room(App& app) {
  if (app.practice) {
    return true;
  }
  auto room = desk::PracticeRoom::load(app.ground, desk::learner_folder(app.options.sittings));
  if (!room) {
    app.say(scenario::to_text(room.error()), true);
    return false;
  }
  app.practice = std::make_shared<PracticeView>(std::move(*room));
  app.practice->skills = app.practice->room.skills();
  app.practice->quizzes = app.practice->room.quizzes();
  app.practice->unfinished = app.practice->room.unfinished();
  return true;
}

/// Another one for every drill; $MATULA_PRACTICE_SEED where a test wants the same again.
std::uint64_t new_seed() {
  if (const char* asked = std::getenv("MATULA_PRACTICE_SEED")) {
    return std::strtoull(asked, nullptr, 10);
  }
  return static_cast<std::uint64_t>(std::chrono::system_clock::now().time_since_epoch().count());
}

void begin_drill(App& app, const std::vector<std::string>& skills) {
  PracticeView& view = *app.practice;
  view.view = {};
  renew(view);
  view.drill.emplace(view.room, skills, new_seed());
}

void begin_quiz(App& app, tl::expected<desk::QuizRun, scenario::Problems> run) {
  if (!run) {
    app.say(scenario::to_text(run.error()), true);
    return;
  }
  app.practice->view = {};
  renew(*app.practice);
  app.practice->quiz.emplace(std::move(*run));
}

bool begin_table(const char* name, int columns) {
  return ImGui::BeginTable(
      name, columns, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH | ImGuiTableFlags_SizingFixedFit);
}

void cell(const std::string& words) {
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  ImGui::TextWrapped("%s", words.c_str());
}

void draw_skills(App& app) {
  heading("Practise: one unknown after another, each answered at once");
  ImGui::TextWrapped(
      "What comes next is about as hard as you can still do three times in four. Nothing is counted here but "
      "what you answered first; stop whenever you like.");
  std::vector<std::string> chosen;
  bool begin = false;
  if (app.widgets.button("drill.all", "All in turn")) {
    begin = true;
  }
  ImGui::SameLine();
  ImGui::TextUnformatted("Every skill, never the same twice running.");
  if (begin_table("skills", 4)) {
    ImGui::TableSetupColumn("");
    ImGui::TableSetupColumn("Skill");
    ImGui::TableSetupColumn("What is asked", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("So far");
    ImGui::TableHeadersRow();
    for (const auto& skill : app.practice->skills) {
      ImGui::TableNextRow();
      ImGui::TableNextColumn();
      if (app.widgets.button(("drill." + skill.key).c_str(), "Practise")) {
        chosen = {skill.key};
        begin = true;
      }
      ImGui::TableNextColumn();
      ImGui::AlignTextToFramePadding();
      ImGui::TextUnformatted(skill.title.c_str());
      cell(skill.about);
      ImGui::TableNextColumn();
      ImGui::AlignTextToFramePadding();
      ImGui::Text("%d answered%s", skill.answered, skill.due ? "; due again" : "");
    }
    ImGui::EndTable();
  }
  if (begin) {
    begin_drill(app, chosen);
  }
}

std::string say_minutes(int minutes) {
  return minutes > 0 ? fmt::format("{} min", minutes) : "no limit";
}

void draw_begun(App& app) {
  std::filesystem::path chosen;
  heading("Begun and not ended");
  for (const auto& quiz : app.practice->unfinished) {
    if (!quiz.problem.empty()) {
      ImGui::TextWrapped("%s cannot be opened: %s", quiz.file.filename().c_str(), quiz.problem.c_str());
      continue;
    }
    if (app.widgets.button(("quiz.resume." + quiz.file.stem().string()).c_str(), "Go on")) {
      chosen = quiz.file;
    }
    ImGui::SameLine();
    ImGui::Text("%s: %d of %d answered, %s", quiz.title.c_str(), quiz.answered, quiz.unknowns,
                say_minutes(quiz.minutes).c_str());
  }
  if (!chosen.empty()) {
    begin_quiz(app, desk::QuizRun::resume(app.practice->room, chosen));
  }
}

void draw_quizzes(App& app) {
  heading("Quizzes: no word of what is right until the end, then all of it");
  ImGui::TextWrapped(
      "A repeat brings new unknowns that are as hard. The words of the grade tables are not at hand.");
  (void)app.widgets.tick("quiz.timed", "Against the clock, where the quiz has a time", app.practice->timed);
  std::filesystem::path chosen;
  if (begin_table("quizzes", 4)) {
    ImGui::TableSetupColumn("");
    ImGui::TableSetupColumn("Quiz");
    ImGui::TableSetupColumn("What is in it", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("Time");
    ImGui::TableHeadersRow();
    for (const auto& quiz : app.practice->quizzes) {
      ImGui::TableNextRow();
      ImGui::TableNextColumn();
      if (quiz.problem.empty() &&
          app.widgets.button(("quiz." + quiz.file.stem().string()).c_str(), "Begin")) {
        chosen = quiz.file;
      }
      ImGui::TableNextColumn();
      ImGui::AlignTextToFramePadding();
      ImGui::TextUnformatted(quiz.title.c_str());
      cell(quiz.problem.empty() ? quiz.about : "Cannot be opened: " + quiz.problem);
      ImGui::TableNextColumn();
      ImGui::AlignTextToFramePadding();
      ImGui::TextUnformatted(say_minutes(quiz.minutes).c_str());
    }
    ImGui::EndTable();
  }
  if (!chosen.empty()) {
    begin_quiz(app, desk::QuizRun::begin(app.practice->room, chosen, app.practice->timed));
  }
}

/// Reads what an offering needs; false with the reason in the message.
bool enter(App& app, Offering offering) {
  if (offering == Offering::Progress) {
    return open_progress(app);
  }
  if (offering == Offering::Examination) {
    open_exam(app);
    return true;
  }
  return offering == Offering::Cases || enter_room(app);
}

} // namespace

void draw_offerings(App& app) {
  struct Row {
    Offering offering;
    const char* name;
    const char* label;
  };
  constexpr Row rows[] = {{Offering::Cases, "offer.cases", "Work a case"},
                          {Offering::Practice, "offer.practice", "Practise"},
                          {Offering::Quizzes, "offer.quizzes", "Take a quiz"},
                          {Offering::Progress, "offer.progress", "How far I am"},
                          {Offering::Examination, "offer.exam", "Sit an examination"}};
  for (const Row& row : rows) {
    if (row.offering != Offering::Cases) {
      ImGui::SameLine();
    }
    ImGui::PushStyleColor(
        ImGuiCol_Button,
        ImGui::GetStyleColorVec4(row.offering == app.offering ? ImGuiCol_TabActive : ImGuiCol_Tab));
    if (app.widgets.button(row.name, row.label) && enter(app, row.offering)) {
      app.offering = row.offering;
    }
    ImGui::PopStyleColor();
  }
}

void draw_practice_offers(App& app) {
  if (app.offering == Offering::Progress) {
    draw_progress(app);
    return;
  }
  if (app.offering == Offering::Practice) {
    draw_skills(app);
    return;
  }
  if (!app.practice->unfinished.empty()) {
    draw_begun(app);
  }
  if (!app.practice->quiz) {
    draw_quizzes(app);
  }
}

} // namespace matula::window
