// The log probability of a reading below what the instrument can show, with its derivative.
#pragma once

namespace keenfall::blunting {

struct LogTail {
  double log_probability = 0;
  double derivative = 0;  // d log_probability / dz
};

// log Phi(z), for the standard normal.
[[nodiscard]] LogTail normal_log_tail(double z);

// log F(z), for Student's t with 4 degrees of freedom (closed form).
[[nodiscard]] LogTail student4_log_tail(double z);

}  // namespace keenfall::blunting
