// The plain blunting model for TMB: minus the log of likelihood times priors, with the deviations
// of the runs to be integrated out by Laplace's approximation. Positive parameters go by their
// logs, with no Jacobian: a mode in logs.
#include <TMB.hpp>

template <class Type>
Type objective_function<Type>::operator()() {
  DATA_VECTOR(log_cuts);
  DATA_IVECTOR(is_start);
  DATA_VECTOR(log_reading);
  DATA_IVECTOR(run);
  DATA_IVECTOR(arm_of_run);
  DATA_SCALAR(centre_start);
  DATA_SCALAR(centre_half_keenness);
  DATA_INTEGER(with_priors);
  PARAMETER_VECTOR(beta0);
  PARAMETER_VECTOR(mu);
  PARAMETER_VECTOR(q);
  PARAMETER(log_s_b0);
  PARAMETER(log_s_tau);
  PARAMETER(log_sigma);
  PARAMETER_VECTOR(run_start);
  PARAMETER_VECTOR(run_half);

  const Type s_b0 = exp(log_s_b0);
  const Type s_tau = exp(log_s_tau);
  const Type sigma = exp(log_sigma);
  vector<Type> p = Type(0.2) + Type(1.8) * invlogit(q);
  Type minus_log = 0;
  for (int r = 0; r < run_start.size(); r++) {
    minus_log -= dnorm(run_start(r), beta0(arm_of_run(r)), s_b0, true);
    minus_log -= dnorm(run_half(r), mu(arm_of_run(r)), s_tau, true);
  }
  for (int i = 0; i < log_reading.size(); i++) {
    const int r = run(i);
    Type curve = run_start(r);
    if (!is_start(i))
      curve += logspace_add(Type(0), p(arm_of_run(r)) * (log_cuts(i) - run_half(r)));
    minus_log -= dnorm(log_reading(i), curve, sigma, true);
  }
  if (with_priors) {
    for (int a = 0; a < mu.size(); a++) {
      minus_log -= dnorm(beta0(a), centre_start, Type(1.5), true);
      minus_log -= dnorm(mu(a), centre_half_keenness, Type(2), true);
      minus_log -= dnorm(log(p(a)), log(Type(0.8)), Type(0.5), true) - log(p(a));
    }
    minus_log -= dnorm(s_b0, Type(0), Type(0.25), true) + dnorm(s_tau, Type(0), Type(0.5), true);
    minus_log -= dnorm(sigma, Type(0), Type(0.3), true);
  }
  ADREPORT(s_b0);
  ADREPORT(s_tau);
  ADREPORT(sigma);
  return minus_log;
}
