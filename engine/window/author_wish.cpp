// "Make it look like this": what is wished, what was found, and whether it is taken.
#include "engine/window/author_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

namespace {

using drafting::Studio;

constexpr const char* as_it_falls = "as it falls";

float label_width() {
  return std::min(ImGui::GetFontSize() * 13, ImGui::GetWindowContentRegionMax().x * 0.5F);
}

void label(const std::string& words) {
  const float left = ImGui::GetCursorPosX();
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(words.c_str());
  if (ImGui::GetItemRectSize().x > label_width() - ImGui::GetFontSize() / 2) {
    ImGui::SetCursorPosX(left + label_width());
  } else {
    ImGui::SameLine(left + label_width());
  }
}

/// One of the words, or nothing; `chosen` counts from the words' own first as 1.
void draw_wish(App& app, const std::string& name, const std::string& title,
               const std::vector<std::string>& words, int& chosen) {
  label(title);
  std::vector<std::string> options{as_it_falls};
  options.insert(options.end(), words.begin(), words.end());
  ImGui::SetNextItemWidth(ImGui::GetFontSize() * 9);
  (void)app.widgets.pick(name.c_str(), "##wish", options, chosen);
}

std::vector<std::string> wishes_of(const AuthorView& view) {
  std::vector<std::string> wishes;
  const auto say = [&](const std::string& name, const std::vector<std::string>& words, int chosen) {
    if (chosen > 0 && chosen <= static_cast<int>(words.size())) {
      wishes.push_back(name + "=" + words[static_cast<std::size_t>(chosen) - 1]);
    }
  };
  for (const auto& offer : view.studio->wish_offers()) {
    const auto found = view.wish.words.find(offer.test);
    say(offer.test, offer.words, found == view.wish.words.end() ? 0 : found->second);
  }
  say("colour", view.studio->colours(), view.wish.colour);
  say("clarity", view.studio->clarities(), view.wish.clarity);
  if (!view.wish.gravity.empty()) {
    wishes.push_back("sg=" + view.wish.gravity);
  }
  if (!view.wish.ph.empty()) {
    wishes.push_back("ph=" + view.wish.ph);
  }
  return wishes;
}

void draw_proposal(App& app, const drafting::Proposal& proposal) {
  AuthorView& view = *app.author;
  heading("Found: nothing is changed until you take it");
  if (app.widgets.button("wish.take", "Take it")) {
    view.focus_page = 3;
    view.wanted = [](Studio& studio) { return studio.take(); };
  }
  ImGui::SameLine();
  if (app.widgets.button("wish.leave", "Leave it")) {
    view.focus_page = 3;
    view.wanted = [](Studio& studio) {
      studio.leave();
      return std::string();
    };
  }
  ImGui::TextUnformatted("It then shows:");
  for (const auto& words : proposal.shows) {
    point(words);
  }
  for (const auto& words : proposal.warnings) {
    point("But: " + words);
  }
  ImGui::TextUnformatted(proposal.lines.empty() ? "Nothing has to be changed." : "What changes:");
  for (const auto& line : proposal.lines) {
    point(fmt::format("{}: {} → {}", line.label, line.from.empty() ? "none" : line.from,
                      line.to.empty() ? "none" : line.to));
  }
}

} // namespace

void draw_author_wish(App& app) {
  AuthorView& view = *app.author;
  Studio& studio = *view.studio;
  if (studio.proposal()) {
    draw_proposal(app, *studio.proposal());
  }
  heading("Make it look like this");
  for (const auto& words : studio.refusal()) {
    point("It cannot be had: " + words);
  }
  if (studio.making()) {
    if (app.widgets.button("wish.stop", "Stop looking")) {
      studio.stop_making();
    }
    ImGui::TextWrapped("Looking for a composition: it takes some seconds ...");
    return;
  }
  for (const auto& offer : studio.wish_offers()) {
    draw_wish(app, "wish." + offer.test, offer.title, offer.words, view.wish.words[offer.test]);
  }
  draw_wish(app, "wish.colour", "Colour", studio.colours(), view.wish.colour);
  draw_wish(app, "wish.clarity", "Clarity", studio.clarities(), view.wish.clarity);
  label("Specific gravity");
  (void)app.widgets.line("wish.sg", view.wish.gravity, number_width());
  label("pH");
  (void)app.widgets.line("wish.ph", view.wish.ph, number_width());
  if (app.widgets.button("wish.go", "Look for a composition")) {
    view.looked_for = true;
    view.focus_page = 3;
    view.wanted = [wishes = wishes_of(view)](Studio& s) { return s.make_it_look(wishes); };
  }
}

} // namespace matula::window
