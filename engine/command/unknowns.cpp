#include "engine/assets/world.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/command/verbs.hpp"
#include "engine/practice/choose.hpp"
#include "engine/practice/quiz.hpp"
#include "engine/practice/store.hpp"
#include "engine/render/picture.hpp"
#include "engine/scoring/standards.hpp"

#include <fmt/format.h>

#include <ostream>

namespace matula::command {
namespace {

using practice::Item;

/// Everything unknowns are made from; or the problems on `err`.
struct Shelf {
  std::unique_ptr<const assets::World> world;
  std::unique_ptr<const scoring::Standards> standards;
  std::shared_ptr<const practice::Store> store;
};

bool load(Shelf& shelf, std::ostream& err) {
  const auto folder = assets::folder();
  auto world = assets::load(folder);
  auto standards = scoring::load_standards(folder);
  if (!world || !standards) {
    err << scenario::to_text(!world ? world.error() : standards.error()) << '\n';
    return false;
  }
  shelf.world = std::move(*world);
  shelf.standards = std::make_unique<const scoring::Standards>(std::move(*standards));
  auto store = practice::load_store(*shelf.world, *shelf.standards, folder);
  if (!store) {
    err << scenario::to_text(store.error()) << '\n';
    return false;
  }
  shelf.store = std::move(*store);
  return true;
}

/// Against white, black and print.
tl::expected<void, std::string> draw_tube(const practice::Tube& tube, const std::filesystem::path& file) {
  std::vector<appearance::Appearance> looks;
  for (const auto card : {appearance::Card::White, appearance::Card::Black, appearance::Card::Printed}) {
    looks.push_back(bench::look(tube.state, tube.setup, tube.vessel, {card, optics::Lamp::Daylight}));
  }
  constexpr int width = 900;
  constexpr int height = 700;
  return render::write_tube_picture(assets::folder(), looks, file, width, height);
}

tl::expected<void, std::string> draw_float(const practice::FloatJar& jar, const std::filesystem::path& file) {
  render::Show show;
  show.in_hand = "jar";
  show.eye_mm = jar.eye_mm;
  constexpr int width = 1280;
  constexpr int height = 800;
  return render::write_bench_picture(assets::folder(), bench::make_scene(jar.state, jar.setup, {}), show,
                                     file, width, height);
}

/// Sums and deliveries have no picture.
tl::expected<void, std::string> draw(const Item& item, const std::filesystem::path& file) {
  if (const auto* tube = std::get_if<practice::Tube>(&item.thing)) {
    return draw_tube(*tube, file);
  }
  if (const auto* jar = std::get_if<practice::FloatJar>(&item.thing)) {
    return draw_float(*jar, file);
  }
  return {};
}

std::string detail(const Item& item) {
  if (const auto* tube = std::get_if<practice::Tube>(&item.thing)) {
    return fmt::format("{:.3f} grades, {:.4g} mg/dL, {} tubes made", tube->read.intensity, tube->mg_per_dl,
                       tube->tried);
  }
  if (const auto* jar = std::get_if<practice::FloatJar>(&item.thing)) {
    return fmt::format("{:.5f} at {:g} °C, eye from {:+g} mm", jar->shows.reading_at_surface, jar->liquid_c,
                       jar->eye_mm);
  }
  if (const auto* sum = std::get_if<practice::Sum>(&item.thing)) {
    const auto& basis = sum->basis;
    return fmt::format(
        "read {:.3f}, water {:.3f}, {:g} °C on a float for {:g} °C, protein {:g}, glucose {:g}", sum->reading,
        1 + basis.zero_error, basis.temperature_c, basis.calibration_c, sum->protein_g_dl, sum->glucose_g_dl);
  }
  const auto& handed = std::get<practice::HandedIn>(item.thing);
  return fmt::format("{}, {} mL", handed.delivery.form_name, handed.delivery.volume_ml);
}

int deliver(const practice::Store& store, const std::vector<practice::Unknown>& unknowns,
            const std::string& folder, std::ostream& out, std::ostream& err) {
  int number = 0;
  for (const auto& unknown : unknowns) {
    const Item item = practice::make_item(store, unknown);
    out << fmt::format("{}  b {:+.2f}  {}  ({})\n", practice::to_text(unknown), item.difficulty,
                       practice::judge(store, item, {}).expected, detail(item));
    if (folder.empty()) {
      continue;
    }
    std::error_code failed;
    std::filesystem::create_directories(folder, failed);
    const auto drawn = draw(item, std::filesystem::path(folder) / fmt::format("unknown-{}.png", ++number));
    if (!drawn) {
      err << drawn.error() << '\n';
      return exit_bad_input;
    }
  }
  return exit_good;
}

} // namespace

int run_drill(const Drill& asked, std::ostream& out, std::ostream& err) {
  Shelf shelf;
  if (!load(shelf, err)) {
    return exit_bad_input;
  }
  std::vector<practice::Unknown> unknowns;
  for (int i = 0; i < asked.count; ++i) {
    unknowns.push_back(
        practice::random_unknown(*shelf.store, *practice::skill_from_word(asked.skill),
                                 static_cast<std::uint64_t>(asked.seed) + static_cast<std::uint64_t>(i)));
  }
  return deliver(*shelf.store, unknowns, asked.output, out, err);
}

int run_quiz(const Quiz& asked, std::ostream& out, std::ostream& err) {
  Shelf shelf;
  if (!load(shelf, err)) {
    return exit_bad_input;
  }
  const std::filesystem::path given = asked.blueprint;
  const auto file =
      given.extension() == ".toml" ? given : assets::folder() / "quizzes" / (asked.blueprint + ".toml");
  const auto blueprint = practice::read_blueprint(file, shelf.store->rules, *shelf.standards);
  if (!blueprint) {
    err << scenario::to_text(blueprint.error()) << '\n';
    return exit_bad_input;
  }
  const auto quiz = practice::make_quiz(*shelf.store, *blueprint, static_cast<std::uint64_t>(asked.seed));
  return deliver(*shelf.store, quiz.unknowns, asked.output, out, err);
}

} // namespace matula::command
