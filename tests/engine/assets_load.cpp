#include "engine/assets/csv.hpp"
#include "engine/assets/readers.hpp"
#include "engine/assets/world.hpp"

#include <catch2/catch.hpp>

#include <fstream>

using namespace matula;

namespace {

const std::filesystem::path shipped = std::filesystem::path(MATULA_SOURCE_DIR) / "assets";

/// A scratch folder that goes when the test ends.
struct Scratch {
  std::filesystem::path folder = std::filesystem::temp_directory_path() / "matula_assets_test";
  Scratch() { std::filesystem::create_directories(folder); }
  ~Scratch() { std::filesystem::remove_all(folder); }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;

  [[nodiscard]] std::filesystem::path write(const char* name, const char* text) const {
    std::ofstream(folder / name) << text;
    return folder / name;
  }
};

std::string first_line(const scenario::Problems& problems) {
  std::string all;
  for (const scenario::Problem& p : problems) {
    all += p.file + ":" + std::to_string(p.line) + ": " + p.found + "; " + p.expected + "\n";
  }
  return all;
}

} // namespace

TEST_CASE("The shipped world loads without a problem") {
  const auto world = assets::load(shipped);
  if (!world) {
    FAIL(first_line(world.error()));
  }
  const assets::World& w = **world;
  CHECK(w.chemistry.catalogue == &w.catalogue);
  CHECK(w.chemistry.collisions.size() == w.catalogue.particles.size());
  CHECK(w.optics.scatter.size() == w.catalogue.particles.size());
  CHECK(w.catalogue.find_species("glucose"));
  CHECK(w.catalogue.find_reagent("benedict") != nullptr);
  CHECK(w.shapes.count("test_tube") == 1);
  CHECK(w.thresholds.copper_hue_deg[0] > w.thresholds.copper_hue_deg[4]);
  CHECK_FALSE(w.thresholds.urine_colours.empty());
  CHECK(w.cautions.at("flame").size() > 20);
}

TEST_CASE("A wrong species file says where and what") {
  const Scratch scratch;
  const auto file =
      scratch.write("species.toml", "[[species]]\nkey = \"a\"\nlabel = \"A\"\nmolar_mass_g_per_mol = -5\n"
                                    "apparent_volume_ml_per_mol = 10\npka = [7, 3]\nsorce = \"x\"\n");
  matter::Catalogue catalogue;
  scenario::Problems problems;
  strict::File toml(file);
  assets::read_species(toml.root(), scratch.folder, catalogue, problems);
  assets::close(toml, problems);
  REQUIRE(problems.size() == 4);
  CHECK(problems[0].line == 1);
  CHECK(problems[0].found == "no 'source'");
  CHECK(problems[1].line == 4);
  CHECK(problems[1].expected == "a number from 1 to 10000000 g/mol");
  CHECK(problems[2].line == 6);
  CHECK(problems[3].expected == "did you mean 'source'?");
}

TEST_CASE("A file of one subject may hold rows of every kind, and name rows of files read later") {
  const Scratch scratch;
  const auto chemistry = scratch.folder / "chemistry";
  std::filesystem::create_directories(chemistry);
  for (const char* name : {"species", "particles", "reagents", "reactions", "precipitations"}) {
    std::ofstream(chemistry / (std::string(name) + ".toml")) << "# nothing here\n";
  }
  std::ofstream(chemistry / "a_test.toml") << "[[reagent]]\nkey = \"bottle\"\nlabel = \"Bottle\"\n"
                                              "mmol_per_l = { salt = 10 }\nsource = \"s\"\n";
  std::ofstream(chemistry / "b_test.toml") << "[[species]]\nkey = \"salt\"\nlabel = \"Salt\"\n"
                                              "molar_mass_g_per_mol = 58\napparent_volume_ml_per_mol = 17\n"
                                              "source = \"s\"\nodd = 1\n";
  matter::Catalogue catalogue;
  reaction::Network network;
  scenario::Problems problems;
  assets::read_chemistry(chemistry, catalogue, network, problems);
  REQUIRE(catalogue.find_reagent("bottle") != nullptr);
  CHECK(catalogue.find_reagent("bottle")->mol_per_l.front().second == Approx(0.01));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].file == (chemistry / "b_test.toml").string());
  CHECK(problems[0].line == 7);
}

TEST_CASE("A reagent with an unknown species names the near one") {
  const Scratch scratch;
  const auto file =
      scratch.write("reagents.toml",
                    "[[reagent]]\nkey = \"r\"\nlabel = \"R\"\nmmol_per_l = { acetat = 5 }\nsource = \"s\"\n");
  matter::Catalogue catalogue;
  matter::Species acetate;
  acetate.key = "acetate";
  catalogue.species.push_back(acetate);
  scenario::Problems problems;
  strict::File toml(file);
  assets::read_reagents(toml.root(), catalogue);
  assets::close(toml, problems);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].line == 4);
  CHECK(problems[0].expected == "a species; did you mean 'acetate'?");
}

TEST_CASE("A float that breaks Archimedes is refused") {
  std::ifstream in(shipped / "instruments.toml");
  std::string text((std::istreambuf_iterator<char>(in)), {});
  text.replace(text.find("mass_g = 7.699"), 14, "mass_g = 9.000");
  const Scratch scratch;
  scenario::Problems problems;
  assets::World world;
  world.catalogue = assets::load_catalogue(shipped, problems);
  assets::read_instruments(scratch.write("instruments.toml", text.c_str()), world, problems);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].found == "mass_g = 9.0");
}

TEST_CASE("A table with a bad row is refused by line") {
  const Scratch scratch;
  scenario::Problems problems;
  const auto csv = assets::read_csv(scratch.write("t.csv", "# note\na,b\n1,2\n3,x\n"), {"a", "b"}, problems);
  CHECK(csv.rows.empty());
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].line == 4);
}

TEST_CASE("A missing folder reports every missing file") {
  const auto world = assets::load("no/such/folder");
  REQUIRE_FALSE(world);
  CHECK(world.error().size() >= 9);
}
