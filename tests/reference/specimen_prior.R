# Coverage of a claim about two equal steels by the prior of the scatter between their pieces: normal runs
# about normal pieces, flat means, half-normal(0.5) run scatter, integrated on a grid. Quoted in
# docs/decisions/0005-specimen-scatter.md. Run: Rscript tests/reference/specimen_prior.R
set.seed(1)
cover <- function(sd,k,r,prior,n=1500,rs=0.25){
  sr <- exp(seq(log(.03),log(1.2),length=24)); ss <- exp(seq(log(.004),log(2.5),length=36))
  g <- expand.grid(sr=sr,ss=ss); SR<-g$sr; SS<-g$ss
  lp <- -0.5*(SR/.5)^2+log(SR)+prior(SS)
  d <- rnorm(n)*sqrt(2*(sd^2+rs^2/r)/k)
  dfw <- 2*k*(r-1); dfb <- 2*(k-1)
  W <- if(dfw>0) rs^2*rchisq(n,dfw) else rep(0,n); B <- (rs^2+r*sd^2)*rchisq(n,dfb)
  V <- SR^2+r*SS^2; sdv <- sqrt(2*V/(r*k)); cov<-0; wid<-0
  for(i in 1:n){ l <- lp-dfw*log(SR)-W[i]/2/SR^2-0.5*dfb*log(V)-B[i]/2/V; w<-exp(l-max(l)); w<-w/sum(w)
    lo<-0;hi<-8; for(q in 1:14){m<-(lo+hi)/2; if(sum(w*pnorm(m/sdv))<.975) lo<-m else hi<-m}
    wid<-wid+2*hi; cov<-cov+(abs(d[i])<=hi)}
  c(cov/n,wid/n)}
ln<-function(m,s) function(x) -0.5*((log(x)-log(m))/s)^2
hn<-function(s) function(x) -0.5*(x/s)^2+log(x)
P<-list('ln.08/.7'=ln(.08,.7),'ln.1/1'=ln(.1,1),'ln.15/.7'=ln(.15,.7),'hn.15'=hn(.15),'hn.25'=hn(.25),'hn.4'=hn(.4))
for(nm in names(P)) for(sd in c(0,.1,.2,.3)) {
 row<-character(0); for(k in 2:4){x<-cover(sd,k,2,P[[nm]],n=500); row<-c(row,sprintf("k%d %.3f (%.2f)",k,x[1],x[2]))}
 cat(nm,sd,paste(row,collapse="  "),"\n")}
