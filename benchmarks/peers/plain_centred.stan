// The plain blunting model of tests/agreement/plain.stan, with the same data and priors, but the levels of the runs
// as parameters in place of their deviations: where every run has many readings, that is easier to sample.
data {
  int<lower=1> readings;
  int<lower=1> runs;
  int<lower=1> arms;
  int<lower=1, upper=runs> run[readings];
  int<lower=1, upper=arms> arm_of_run[runs];
  vector<lower=0>[readings] cuts;
  vector[readings] log_reading;
  real centre_start;
  real centre_half_keenness;
}
parameters {
  vector[arms] beta0;                    // log start
  vector[arms] mu;                       // log half keenness
  vector<lower=0.2, upper=2>[arms] p;    // shape
  real<lower=0> s_b0;
  real<lower=0> s_tau;
  real<lower=0> sigma;
  vector[runs] run_start;
  vector[runs] run_half;
}
model {
  beta0 ~ normal(centre_start, 1.5);
  mu ~ normal(centre_half_keenness, 2);
  p ~ lognormal(log(0.8), 0.5);
  s_b0 ~ normal(0, 0.25);
  s_tau ~ normal(0, 0.5);
  sigma ~ normal(0, 0.3);
  run_start ~ normal(beta0[arm_of_run], s_b0);
  run_half ~ normal(mu[arm_of_run], s_tau);
  {
    vector[readings] curve;
    for (i in 1:readings) {
      curve[i] = run_start[run[i]];
      if (cuts[i] > 0)
        curve[i] += log1p_exp(p[arm_of_run[run[i]]] * (log(cuts[i]) - run_half[run[i]]));
    }
    log_reading ~ normal(curve, sigma);
  }
}
