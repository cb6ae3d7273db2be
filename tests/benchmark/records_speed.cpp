// A class's records: how long import with marks takes beside marking each sitting alone, how large a store of
// a million readings is, and how long the class view takes beside one plain pass over its readings.
// records_speed [--small] [--sittings N] [--readings N] [--threads N] [--store FILE]; 0 leaves a part out. A
// store named is kept, and one that is there already is looked at as it is.
#include "class_lot.hpp"
#include "ratio.hpp"

#include "engine/judging/figures.hpp"
#include "engine/records/import.hpp"
#include "engine/records/squeeze.hpp"
#include "engine/scoring/report_json.hpp"

#include <chrono>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <unistd.h>

namespace {

using namespace matula;
namespace fs = std::filesystem;

struct Sizes {
  int sittings = 1000;
  int readings = 1000000;
  int threads = 2;
  int alone = 20; ///< Marked without sharing, as the reference.
  std::string store;
};

double wall_s() {
  using namespace std::chrono;
  return duration<double>(steady_clock::now().time_since_epoch()).count();
}

struct Room {
  std::unique_ptr<const assets::World> world;
  scoring::Standards standards;
  std::unique_ptr<records::Marker> marker;
};

Room open_room() {
  auto world = assets::load(assets::folder());
  auto standards = scoring::load_standards(assets::folder());
  if (!world || !standards) {
    throw std::runtime_error("the assets cannot be read");
  }
  Room room{std::move(*world), std::move(*standards), nullptr};
  room.marker = std::make_unique<records::Marker>(*room.world, room.standards, assets::folder());
  return room;
}

records::Incoming incoming(int student, const std::string& exercise, std::string log) {
  records::Incoming in;
  in.pseudonym = "student-" + std::to_string(student);
  in.exercise = exercise;
  in.scenario_text = bench_tests::twelve_scenario;
  in.scenario_file = "twelve.toml";
  in.log_text = std::move(log);
  in.came_from = in.pseudonym;
  return in;
}

bool import_lot(Room& room, const Sizes& sizes, const fs::path& file) {
  bench_tests::TwelveTests lot(*room.world);
  std::vector<records::Incoming> sittings;
  for (int i = 0; i < sizes.sittings; ++i) {
    sittings.push_back(incoming(i, "twelve", lot.log()));
  }
  records::Store store(file.string());
  const double begin_s = wall_s();
  const double cpu_s = bench_tests::processor_s();
  const auto sum = records::import_all(store, *room.marker, sittings, {"", "", sizes.threads, 1}, {});
  const double took_s = wall_s() - begin_s;
  const double worked_s = bench_tests::processor_s() - cpu_s;
  const auto scenario = scenario::parse(bench_tests::twelve_scenario, "twelve.toml", room.world->catalogue);
  const double alone_cpu_s = bench_tests::processor_s();
  bool same = sum.fresh == sizes.sittings;
  for (int i = 0; i < sizes.alone && i < sizes.sittings; ++i) {
    const auto log = sitting::parse_log(sittings[static_cast<std::size_t>(i)].log_text, "log");
    const auto report = scoring::score(*room.world, room.standards, *scenario, log->events);
    same = same && report.standing.readings == 12;
  }
  const double alone_s = (bench_tests::processor_s() - alone_cpu_s) / std::min(sizes.alone, sizes.sittings);
  std::printf("import and marks: %d sittings of 12 tests in %.1f s on %d threads (%.1f processor s, %.1f ms "
              "a sitting); marked alone "
              "%.1f ms a sitting; ratio %.2f\n",
              sizes.sittings, took_s, sizes.threads, worked_s, 1000 * worked_s / sizes.sittings,
              1000 * alone_s, alone_s / (worked_s / sizes.sittings));
  for (const auto& refused : sum.refused) {
    std::printf("refused: %s\n", refused.why.c_str());
  }
  return same;
}

constexpr int per_sitting = 12;
constexpr int students = 2000;

/// One sitting marked in earnest, and as many as wanted with other words for other students, stored with logs
/// of their own.
bool fill(Room& room, int count, const fs::path& file) {
  bench_tests::TwelveTests lot(*room.world);
  const auto first = room.marker->mark(incoming(0, "twelve", lot.log()));
  if (!first) {
    std::printf("refused: %s\n", first.error().c_str());
    return false;
  }
  std::mt19937_64 dice(1);
  records::Store store(file.string());
  std::vector<records::Marked> batch;
  for (int i = 0; i < count; ++i) {
    records::Marked one = *first;
    one.incoming = incoming(i % students, "case-" + std::to_string(i / students), lot.log());
    one.log_name = records::content_name(one.incoming.log_text);
    for (auto& mark : one.report.marks) {
      if (mark.graded) {
        mark.graded->truth = static_cast<int>(dice() % 4);
        mark.graded->intensity = mark.graded->truth + static_cast<double>(dice() % 1000) / 1000 - 0.5;
        mark.graded->read = std::min(3, std::max(0, mark.graded->truth + static_cast<int>(dice() % 3) - 1));
      }
    }
    batch.push_back(std::move(one));
    if (batch.size() == 500 || i + 1 == count) {
      store.add_all(batch, i);
      batch.clear();
    }
  }
  return true;
}

bool fill_and_look(Room& room, const Sizes& sizes, const fs::path& file) {
  const int count = sizes.readings / per_sitting;
  double fill_s = wall_s();
  if (!fs::exists(file) && !fill(room, count, file)) {
    return false;
  }
  fill_s = wall_s() - fill_s;
  const double open_s = wall_s();
  records::Store store(file.string());
  const double opened_s = wall_s() - open_s;
  const auto timed = [](auto work) {
    const double begin = wall_s();
    work();
    return wall_s() - begin;
  };
  std::size_t cells = 0;
  const double pairs_s = timed([&] { cells = records::pair_counts(store, {}).size(); });
  const double faults_s = timed([&] { cells += records::fault_counts(store, {}).size(); });
  const double students_s = timed([&] { cells += records::student_sums(store, {}).size(); });
  const double items_s = timed([&] { cells += records::item_marks(store, {"case-1", "", ""}).size(); });
  const double plain_s = timed([&] { cells += records::plain_pass(store) > 0 ? 1 : 0; });
  const auto basis = judging::load_basis(assets::folder());
  const double one_case_s = timed([&] {
    cells += judging::judge(store, {"case-1", "", ""}, *basis).students.size();
  });
  const double department_s = timed([&] { cells += judging::judge(store, {}, *basis).students.size(); });
  const double view_s = pairs_s + faults_s + students_s + items_s;
  std::printf(
      "store: %d readings, %d sittings, %.1f MB (filled in %.0f s); opened and looked through in %.2f s\n",
      count * per_sitting, count, static_cast<double>(fs::file_size(file)) / 1e6, fill_s, opened_s);
  std::printf("class view's queries: %.3f s (pairs %.3f, faults %.3f, students %.3f, items of a case %.3f); "
              "one plain pass over the "
              "readings %.3f s; ratio %.2f\n",
              view_s, pairs_s, faults_s, students_s, items_s, plain_s, view_s / plain_s);
  std::printf("one case of %d students judged with all intervals and lines: %.2f s\n",
              std::min(count, students), one_case_s);
  std::printf("the whole store as one class, without the items of each case: %.2f s\n", department_s);
  return cells > 10;
}

} // namespace

int main(int count, char** words) {
  Sizes sizes;
  for (int i = 1; i < count; ++i) {
    const auto number = [&] { return i + 1 < count ? std::atoi(words[++i]) : 0; };
    if (std::strcmp(words[i], "--small") == 0) {
      sizes = {6, 1200, 2, 2, ""};
    } else if (std::strcmp(words[i], "--sittings") == 0) {
      sizes.sittings = number();
    } else if (std::strcmp(words[i], "--readings") == 0) {
      sizes.readings = number();
    } else if (std::strcmp(words[i], "--threads") == 0) {
      sizes.threads = number();
    } else if (std::strcmp(words[i], "--store") == 0 && i + 1 < count) {
      sizes.store = words[++i];
    }
  }
  const fs::path folder = fs::temp_directory_path() / ("matula_records_speed_" + std::to_string(::getpid()));
  fs::create_directories(folder);
  auto room = open_room();
  bool good = true;
  if (sizes.sittings > 0) {
    good = import_lot(room, sizes, folder / "import.db") && good;
  }
  if (sizes.readings > 0) {
    good =
        fill_and_look(room, sizes, sizes.store.empty() ? folder / "large.db" : fs::path(sizes.store)) && good;
  }
  fs::remove_all(folder);
  return good ? 0 : 1;
}
