// Statistics of a large class against NumPy and R on the same numbers in the same run, in processor seconds:
// each line of the output says what was done, what it took here and there, and how many times as long the
// other took. statistics_speed [--small] [--threads N] [FOLDER for the numbers]; the references are passed
// over, and that is said, where their interpreter or package is missing.
#include "ratio.hpp"

#include "engine/statistics/agreement.hpp"
#include "engine/statistics/boundaries.hpp"
#include "engine/statistics/resample.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <map>
#include <random>
#include <sstream>
#include <string>
#include <vector>

namespace {

using namespace matula::statistics;

struct Sizes {
  std::size_t learners = 10000;
  std::size_t readings = 40;
  std::size_t learners_for_r = 300; ///< R is asked for a part, and its time is scaled up.
  std::size_t students = 5000;
  std::size_t attempts = 200;
  int draws = 2000;
  int threads = 2;
};

/// Numbers of a class, alike for all programs.
class Dice {
public:
  double even() { return static_cast<double>(source_() >> 11) / 9007199254740992.0; }
  double normal() { // Box and Muller.
    const double radius = std::sqrt(-2 * std::log(1 - even()));
    return radius * std::cos(6.283185307179586 * even());
  }

private:
  std::mt19937_64 source_{20261127};
};

struct Class {
  std::vector<GradedReading> readings; ///< Learner by learner.
  std::vector<std::uint8_t> truth;     ///< Student by student.
  std::vector<std::uint8_t> read;
};

int grade_of(double seen, const std::array<double, lines>& line) {
  int grade = 0;
  for (const double one : line) {
    grade += seen > one ? 1 : 0;
  }
  return grade;
}

Class make_class(const Sizes& sizes) {
  Dice dice;
  Class all;
  for (std::size_t l = 0; l < sizes.learners; ++l) {
    const double shift = 0.5 * dice.normal();
    const double spread = 0.5 * std::exp(0.3 * dice.normal());
    auto line = reference_lines;
    for (double& one : line) {
      one += shift + 0.25 * dice.normal();
    }
    std::sort(line.begin(), line.end());
    for (std::size_t i = 0; i < sizes.readings; ++i) {
      const double x = -0.5 + 6 * dice.even();
      all.readings.push_back({x, grade_of(x + spread * dice.normal(), line)});
    }
  }
  for (std::size_t s = 0; s < sizes.students; ++s) {
    const double shift = 0.35 * dice.normal();
    for (std::size_t i = 0; i < sizes.attempts; ++i) {
      const double x = -0.5 + 6 * dice.even();
      all.truth.push_back(static_cast<std::uint8_t>(grade_of(x, reference_lines)));
      all.read.push_back(
          static_cast<std::uint8_t>(grade_of(x + shift + 0.55 * dice.normal(), reference_lines)));
    }
  }
  return all;
}

template <class T> void write(const std::filesystem::path& file, const std::vector<T>& values) {
  std::ofstream(file, std::ios::binary)
      .write(reinterpret_cast<const char*>(values.data()),
             static_cast<std::streamsize>(values.size() * sizeof(T)));
}

void write_class(const std::filesystem::path& folder, const Sizes& sizes, const Class& all) {
  std::vector<double> intensity;
  std::vector<std::uint8_t> grade;
  for (const GradedReading& reading : all.readings) {
    intensity.push_back(reading.intensity);
    grade.push_back(static_cast<std::uint8_t>(reading.grade));
  }
  write(folder / "intensity.f64", intensity);
  write(folder / "grade.u8", grade);
  write(folder / "truth.u8", all.truth);
  write(folder / "read.u8", all.read);
  std::ofstream(folder / "sizes.txt")
      << sizes.readings << ' ' << sizes.attempts << ' ' << sizes.draws << ' ' << sizes.learners_for_r << '\n';
}

/// "name value ..." lines of what a reference printed; empty when it could not run.
std::map<std::string, std::vector<double>> ask(const std::string& command) {
  std::map<std::string, std::vector<double>> answers;
  FILE* pipe = popen((command + " 2>/dev/null").c_str(), "r");
  std::array<char, 4096> line{};
  while (pipe != nullptr && std::fgets(line.data(), static_cast<int>(line.size()), pipe) != nullptr) {
    std::istringstream words(line.data());
    std::string name;
    words >> name;
    for (double value = 0; words >> value;) {
      answers[name].push_back(value);
    }
  }
  if (pipe != nullptr) {
    pclose(pipe);
  }
  return answers;
}

double wall_s() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

/// Middle of three.
template <class Work> double processor_of(Work work) {
  std::vector<double> took;
  for (int i = 0; i < 3; ++i) {
    const double begin = matula::bench_tests::processor_s();
    work();
    took.push_back(matula::bench_tests::processor_s() - begin);
  }
  std::sort(took.begin(), took.end());
  return took[1];
}

void say(const std::string& what, double ours_s, const std::string& whose, double theirs_s) {
  std::printf("%-46s %9.4f s   %-34s %9.3f s   %7.1f times\n", what.c_str(), ours_s, whose.c_str(), theirs_s,
              theirs_s / ours_s);
}

struct Ours {
  std::vector<std::optional<Boundaries>> fitted;
  double fit_s = 0;
  double fit_wall_s = 0;
  double kappa_s = 0;
  double kappa = 0;
  double bootstrap_s = 0;
  Interval interval;
};

Ours measure(const Sizes& sizes, const Class& all) {
  Ours ours;
  std::vector<std::span<const GradedReading>> readers;
  for (std::size_t l = 0; l < sizes.learners; ++l) {
    readers.emplace_back(all.readings.data() + l * sizes.readings, sizes.readings);
  }
  ours.fit_wall_s = 1e9;
  ours.fit_s = processor_of([&] {
    const double begin = wall_s();
    ours.fitted = fit_boundaries_of_all(readers, sizes.threads);
    ours.fit_wall_s = std::min(ours.fit_wall_s, wall_s() - begin);
  });
  const auto weights = agreement_weights(Weighting::Quadratic, grades);
  ours.kappa_s = processor_of(
      [&] { ours.kappa = kappa_value(count_pairs(all.truth, all.read, grades), weights).value_or(0); });
  std::vector<PairTable> by_student;
  for (std::size_t s = 0; s < sizes.students; ++s) {
    by_student.push_back(count_pairs(std::span(all.truth).subspan(s * sizes.attempts, sizes.attempts),
                                     std::span(all.read).subspan(s * sizes.attempts, sizes.attempts),
                                     grades));
  }
  ours.bootstrap_s = processor_of(
      [&] { ours.interval = kappa_interval(by_student, weights, sizes.draws, 11).value_or(Interval{}); });
  return ours;
}

/// Largest difference of a line between two programs.
double farthest(const std::vector<std::optional<Boundaries>>& fitted, const std::filesystem::path& theirs) {
  std::ifstream in(theirs, std::ios::binary);
  double most = 0;
  for (const auto& one : fitted) {
    std::array<double, lines> line{};
    in.read(reinterpret_cast<char*>(line.data()), sizeof(line));
    for (std::size_t k = 0; k < lines; ++k) {
      most = std::max(most, one ? std::abs(one->line[k] - line[k]) : 1e9);
    }
  }
  return in ? most : 1e9;
}

void report(const Sizes& sizes, const Ours& ours, const std::filesystem::path& folder) {
  const std::string scripts = MATULA_SOURCE_DIR "/tests/benchmark/statistics_reference";
  const std::string here = " '" + folder.string() + "'";
  auto numpy = ask("python3 " + scripts + ".py" + here);
  if (numpy.empty()) { // Debian's own, where another one comes first.
    numpy = ask("/usr/bin/python3 " + scripts + ".py" + here);
  }
  auto r = ask("Rscript --vanilla " + scripts + ".R" + here);
  const std::string fitted = "lines of " + std::to_string(sizes.learners) + " learners, " +
                             std::to_string(sizes.readings) + " readings each";
  std::printf("%s: %.3f s of the processor, %.3f s by the clock on %d threads\n", fitted.c_str(), ours.fit_s,
              ours.fit_wall_s, sizes.threads);
  if (numpy.empty()) {
    std::puts("NumPy or SciPy is not there: not compared");
  } else {
    say(fitted, ours.fit_s, "NumPy, in batches", numpy["fit"].at(0));
    say("  the same by the clock", ours.fit_wall_s, "NumPy, by the clock", numpy["fit"].at(1));
    std::printf("  largest difference of a line: %.1e grades\n", farthest(ours.fitted, folder / "lines.f64"));
    say("weighted kappa of " + std::to_string(sizes.students * sizes.attempts) + " pairs", ours.kappa_s,
        "NumPy table", numpy["kappa"].at(0));
    std::printf("  kappa %.10f and %.10f\n", ours.kappa, numpy["kappa"].at(1));
    say("students drawn anew " + std::to_string(sizes.draws) + " times", ours.bootstrap_s,
        "NumPy, by matrices", numpy["bootstrap"].at(0));
    std::printf("  intervals %.5f to %.5f and %.5f to %.5f\n", ours.interval.low, ours.interval.high,
                numpy["bootstrap"].at(1), numpy["bootstrap"].at(2));
  }
  if (r.empty()) {
    std::puts("R or its package ordinal is not there: not compared");
  } else {
    const double scale = static_cast<double>(sizes.learners) / r["clm"].at(1);
    say(fitted, ours.fit_s, "R ordinal::clm, scaled from " + std::to_string(static_cast<int>(r["clm"].at(1))),
        scale * r["clm"].at(0));
    std::printf("  clm gave no lines for %.0f of these\n", r["clm"].at(2));
  }
}

} // namespace

int main(int argc, char** argv) {
  Sizes sizes;
  std::filesystem::path folder = std::filesystem::temp_directory_path() / "matula_statistics_speed";
  for (int i = 1; i < argc; ++i) {
    const std::string word = argv[i];
    if (word == "--small") {
      sizes = {40, 40, 5, 20, 50, 50, 2};
    } else if (word == "--threads" && i + 1 < argc) {
      sizes.threads = std::stoi(argv[++i]);
    } else {
      folder = word;
    }
  }
  std::filesystem::create_directories(folder);
  const Class all = make_class(sizes);
  write_class(folder, sizes, all);
  report(sizes, measure(sizes, all), folder);
  return 0;
}
