% A whole car solved by Newton steps on all its unknowns at once, from rows of numbers (random_car.h
% says what stands in them). Written from docs/physics.md alone, to be compared with the program.
%
%   octave-cli whole_car.m FILE
%
% prints "N cars, M stopped, worst W": how many were compared, how many ended on a floor or at a bore's
% end, and the greatest difference, as a part of the figure itself.
%
% Unknowns of a car, each with its scale: effort, force on the rod, force out of the servo, rod travel,
% pedal travel; of each master the force on its rod and its circuits' pressures; of each domain its
% pressure; of each pipe, hose, chamber and brake the volume it takes; of each circuit the volume that
% the air loses, the volume in all and the stroke of its piston. As many equations as unknowns. The
% slopes come from steps along the imaginary axis, all at once.

1;

function c = constants()
  c.atmosphere = 101325;
  psi = 6894.757293168361;
  c.psi = psi;
  % docs/physics.md, Volumes: fluids as grade, K0 at 20 and at 100 degC, K'
  c.fluids = [3, 1.95e9, 1.30e9, 10; 4, 1.95e9, 1.30e9, 10; 5.1, 1.95e9, 1.30e9, 10;
              5, 1.05e9, 0.68e9, 11; 0, 1.65e9, 1.10e9, 10.5];
  % ceilings of hoses: pressures, then cm3 a foot by band of bore
  c.hose_psi = [1000, 1500, 2900] * psi;
  c.hose_rows = [0.66, 0.79, 1.21; 0.86, 1.02, 1.67; 1.04, 1.30, NaN] * 1e-6 / 0.3048;
  c.metals = [207e9, 0.29; 135e9, 0.34];
end

function y = above(x, least) % max(x, least) for numbers with an imaginary step
  y = x;
  low = real(x) < least;
  y(low) = least;
end

function y = below(x, most)
  y = x;
  most = most + zeros(size(x));
  high = real(x) > real(most);
  y(high) = most(high);
end

function y = hose_ceiling(inside, p, c) % m3 per m
  band = 1 + (inside > 3.175e-3 + 0.05e-3) + (inside > 5e-3 + 0.05e-3);
  points = c.hose_rows(band, :);
  at = c.hose_psi;
  n1 = log(points(2) / points(1)) / log(at(2) / at(1));
  y = points(1) * (p / at(1)) .^ n1;
  early = real(p) < at(1); % a straight line from nothing
  y(early) = points(1) * p(early) / at(1);
  if !isnan(points(3))
    n2 = log(points(3) / points(2)) / log(at(3) / at(2));
    late = real(p) > at(2);
    y(late) = points(2) * (p(late) / at(2)) .^ n2;
  end
end

function y = servo_law(x, s, c) % force out of a direct servo
  ceiling = s.efficiency * pi * s.diameter ^ 2 / 4 * s.vacuum - s.spring;
  if !s.assisted
    y = above(x - s.spring, 0);
    return
  end
  helped = s.jump + s.ratio * (x - s.cut_in);
  y = above(below(helped, x + ceiling), 0);
  y(real(x) < s.cut_in) = 0;
end

function [y, helps] = remote_law(x, s, c) % pressure out of a remote servo
  area = pi * s.bore ^ 2 / 4;
  least = x;
  if !s.passes
    least = above(s.before * x - s.spring / area, 0);
  end
  y = least;
  helps = false;
  if s.assisted && real(x) >= s.line_cut_in
    ceiling = s.efficiency * pi * s.diameter ^ 2 / 4 * s.vacuum - s.spring;
    law = below(s.jump / area + s.ratio * (x - s.line_cut_in), s.before * x + ceiling / area);
    helps = real(law) > real(least);
    if helps
      y = law;
    end
  end
end

function [out, rate] = valve_law(in, how, a, b)
  out = in; rate = 1;
  switch how
    case 1
      out = min(in, a); rate = in < a;
    case 2
      if in > a
        out = a + b * (in - a); rate = b;
      end
    case 3
      if in < b
        rate = b / (b - a) * (in > a);
        out = max((in - a) * b / (b - a), 0);
      end
  end
end

function car = read_car(rows, c)
  pick = @(kind) rows(rows(:, 2) == kind, 3:end);
  p = pick(1);
  car.ratio = p(1); car.efficiency = p(2); car.play = p(3); car.stiffness = p(4);
  car.effort = p(5); car.spring = p(6); car.travel = p(7); car.first = p(8); car.second = p(9);
  s = pick(2); t = pick(3);
  car.servo = struct('type', s(1), 'diameter', s(2), 'ratio', s(3), 'cut_in', s(4), 'jump', s(5), ...
                     'vacuum', s(6), 'efficiency', s(7), 'spring', s(8), 'bore', s(9), ...
                     'line_cut_in', s(10), 'gap', t(1), 'assisted', t(2) != 0, ...
                     'motion', t(4 + (t(2) == 0)), ... % lost motion, with vacuum or without
                     'passes', t(6) != 0, 'before', 1 - (t(7) / max(s(9), 1e-9)) ^ 2, 'valve', t(8));
  car.lost = t(3);
  car.felt = !isnan(car.play); % free play is said: the gap of the rod lies within it
  if !car.felt
    car.play = 0;
  end
  car.in_case = pick(5);
  car.masters = pick(4);
  f = pick(6);
  row = c.fluids(c.fluids(:, 1) == f(1), :);
  along = min(max((f(2) - 20) / 80, 0), 1);
  car.k0 = row(2) + along * (row(3) - row(2)); car.kslope = row(4); car.air = f(3);
  car.circuits = pick(7); car.domains = pick(8); car.pipes = pick(9); car.hoses = pick(10);
  car.chambers = pick(11); car.discs = pick(12); car.drums = pick(13);
  car.wheels = pick(14); car.answer = pick(15);
  % what lies where in the unknowns
  nm = rows_of(car.masters); nc = rows_of(car.circuits);
  at = 5;
  car.at_rod = at + (1:nm); at += nm;
  car.at_domain = at + (1:rows_of(car.domains)); at += rows_of(car.domains);
  car.at_pipe = at + (1:rows_of(car.pipes)); at += rows_of(car.pipes);
  car.at_hose = at + (1:rows_of(car.hoses)); at += rows_of(car.hoses);
  car.at_chamber = at + (1:rows_of(car.chambers)); at += rows_of(car.chambers);
  car.at_disc = at + (1:rows_of(car.discs)); at += rows_of(car.discs);
  car.at_drum = at + (1:rows_of(car.drums)); at += rows_of(car.drums);
  car.at_air = at + (1:nc); at += nc;
  car.at_volume = at + (1:nc); at += nc;
  car.at_stroke = at + (1:nc); at += nc;
  car.count = at;
  scale = 1e-6 * ones(at, 1);
  scale([1:3, car.at_rod]) = 100;
  scale([4, 5, car.at_stroke]) = 1e-2;
  scale(car.at_domain) = 1e6;
  car.scale = scale;
  for k = 1:nc % what takes volume in each circuit
    car.takers{k} = [car.at_pipe(in_circuit(car, car.pipes, k)), car.at_hose(in_circuit(car, car.hoses, k)), ...
                     car.at_chamber(in_circuit(car, car.chambers, k)), ...
                     car.at_disc(in_circuit(car, car.discs, k)), car.at_drum(in_circuit(car, car.drums, k))];
  end
  inner = car.pipes(:, 3) / 2 - car.pipes(:, 4);
  held = zeros(rows_of(car.domains), 1); % fluid in each domain, over which the air is spread
  held = add_held(held, car.pipes(:, 1), pi * inner .^ 2 .* car.pipes(:, 2));
  held = add_held(held, car.hoses(:, 1), pi * car.hoses(:, 3) .^ 2 / 4 .* car.hoses(:, 2));
  held = add_held(held, car.chambers(:, 1), car.chambers(:, 2));
  for k = 1:nc
    of = car.domains(:, 1) == k;
    held(of) = held(of) / sum(held(of));
  end
  car.held = held;
  if car.servo.type == 2
    car = beyond_servo(car, c);
  end
end

function held = add_held(held, domains, volumes)
  for i = 1:numel(domains)
    held(domains(i)) += volumes(i);
  end
end

% What the air in some domains loses at the pressures there, and how that goes with each of them.
function [lost, rate] = air_lost(p, of, car, c)
  p = p(:);
  lost = car.air * sum(car.held(of) .* (1 - c.atmosphere ./ (c.atmosphere + p(of))));
  rate = car.air * car.held(of) * c.atmosphere ./ (c.atmosphere + p(of)) .^ 2;
end

% What all beyond a remote servo takes where its cut in stands before and behind it.
function car = beyond_servo(car, c)
  x = zeros(car.count, 1);
  p = zeros(rows_of(car.domains), 1);
  p(1:2) = car.servo.line_cut_in;
  for d = 3:rows_of(car.domains)
    p(d) = valve_law(p(car.domains(d, 2)), car.domains(d, 3), car.domains(d, 4), car.domains(d, 5));
  end
  x(car.at_domain) = p;
  [r, ~] = part_residuals(zeros(car.count, 1), eye(car.count), x, car, c);
  lies = @(at, parts) at(parts(:, 1) > 1);
  car.beyond = [lies(car.at_pipe, car.pipes), lies(car.at_hose, car.hoses), ...
                lies(car.at_chamber, car.chambers)];
  if !isempty(car.discs)
    car.beyond = [car.beyond, lies(car.at_disc, car.discs)];
  end
  if !isempty(car.drums)
    car.beyond = [car.beyond, lies(car.at_drum, car.drums)];
  end
  car.passed = -sum(r(car.beyond)); % each residual is nothing less what the part takes
  car.passed += air_lost(p, find(car.domains(:, 2) != 0), car, c);
end

function n = rows_of(m)
  n = size(m, 1);
end

% Residuals of all equations at x, and their slopes: how each changes with each unknown. Where a law is
% not a plain sum, its slope comes from a step along the imaginary axis. stop: 0, or which end is met
% in place of the effort asked: 1 the pedal's travel, 2 + circuit the stroke of that circuit's piston.
function [r, slope] = residuals(x, car, stop, c)
  n = car.count;
  r = zeros(n, 1);
  slope = eye(n); % each equation is "its unknown less what it should be"
  if stop == 0
    r(1) = x(1) - car.effort;
  elseif stop == 1
    slope(1, 1) = 0; slope(1, 5) = 1e4; % 1e4 N a metre, to have a force
    r(1) = (x(5) - car.travel) * 1e4;
  else
    at = car.at_stroke(stop - 2);
    slope(1, 1) = 0; slope(1, at) = 1e4;
    r(1) = (x(at) - piston_end(car, stop - 2)) * 1e4;
  end
  lever = car.efficiency * car.ratio;
  r(2) = x(2) - lever * max(x(1) - car.spring, 0);
  slope(2, 1) = -lever * (x(1) > car.spring);
  if car.servo.type == 1
    [out, rate] = with_slope(@(f) servo_law(f, car.servo, c), x(2), 1e-20);
  else
    out = x(2); rate = 1;
  end
  r(3) = x(3) - out;
  slope(3, 2) = -rate;
  nm = rows_of(car.masters);
  shares = 1;
  if nm == 2
    shares = [car.second, car.first] / (car.first + car.second);
  end
  moved = 0;
  for m = 1:nm
    at = car.at_rod(m);
    r(at) = x(at) - shares(m) * x(3);
    slope(at, 3) = -shares(m);
    strokes = car.at_stroke(car.circuits(:, 1) == m);
    gap = car.masters(m, 5);
    if car.servo.type == 1
      if !isnan(car.servo.gap)
        gap = car.servo.gap;
      end
      gap += car.servo.motion;
    elseif car.felt
      gap = 0;
    end
    moved += shares(m) * (gap + sum(x(strokes)));
    slope(4, strokes) = -shares(m);
  end
  r(4) = x(4) - moved;
  r(5) = x(5) - (car.play + car.ratio * x(4) + x(1) / car.stiffness);
  slope(5, 4) = -car.ratio;
  slope(5, 1) = -1 / car.stiffness;
  [r, slope] = domain_residuals(r, slope, x, car, c);
  [r, slope] = part_residuals(r, slope, x, car, c);
  [r, slope] = circuit_residuals(r, slope, x, car, c);
  r = r ./ car.scale;
  slope = slope .* (car.scale' ./ car.scale);
end

function [y, rate] = with_slope(law, x, step)
  y = law(x + 1i * step);
  rate = imag(y) / step;
  y = real(y);
end

function [r, slope] = domain_residuals(r, slope, x, car, c)
  p = x(car.at_domain);
  for d = 1:rows_of(car.domains)
    at = car.at_domain(d);
    circuit = car.domains(d, 1); before = car.domains(d, 2); how = car.domains(d, 3);
    a = car.domains(d, 4); b = car.domains(d, 5);
    if before == 0
      [out, rate, from] = master_pressure(x, car, circuit);
      r(at) = p(d) - out;
      slope(at, from) = -rate;
      continue
    end
    in = p(before);
    if how == 4
      [out, rate] = with_slope(@(q) remote_law(q, car.servo, c), in, 1e-20);
    else
      [out, rate] = valve_law(in, how, a, b);
    end
    r(at) = p(d) - out;
    slope(at, car.at_domain(before)) = -rate;
  end
end

% First piston: e R less its spring and its friction. The second gets the same force through the first
% spring, less its own spring and both frictions, whether the first makes pressure or not.
function [p, rate, from] = master_pressure(x, car, circuit)
  m = car.circuits(circuit, 1);
  from = car.at_rod(m);
  if circuit == car.lost
    p = 0; rate = 0;
    return
  end
  lost = car.masters(m, 7) + car.masters(m, 9);
  if car.circuits(circuit, 2) == 2
    lost = car.masters(m, 8) + 2 * car.masters(m, 9);
  end
  force = car.masters(m, 6) * x(from) - lost;
  area = pi * car.masters(m, 2) ^ 2 / 4;
  p = max(force, 0) / area;
  rate = car.masters(m, 6) / area * (force > 0);
end

function [r, slope] = set_parts(r, slope, x, at, domains, taken, rates, car)
  r(at) = x(at) - taken;
  slope(sub2ind(size(slope), at(:), car.at_domain(domains)(:))) = -rates;
end

function [r, slope] = part_residuals(r, slope, x, car, c)
  p = x(car.at_domain) + 1i * 1e-20; % every part sees one pressure
  p = p(:);
  fluid = @(volume, p) volume .* (1 - (1 + car.kslope * p / car.k0) .^ (-1 / car.kslope));
  outer = car.pipes(:, 3) / 2; inner = outer - car.pipes(:, 4);
  metal = c.metals(car.pipes(:, 5), :);
  e = metal(:, 1); nu = metal(:, 2);
  wall = e .* (outer .^ 2 - inner .^ 2);
  around = ((1 + nu) .* outer .^ 2 + (1 - 2 * nu) .* inner .^ 2) ./ wall;
  along = (1 - 2 * nu) .* inner .^ 2 ./ wall;
  volume = pi * inner .^ 2 .* car.pipes(:, 2);
  at = p(car.pipes(:, 1));
  y = volume .* (2 * around + along) .* at + fluid(volume, at);
  [r, slope] = set_parts(r, slope, x, car.at_pipe, car.pipes(:, 1), real(y), imag(y) / 1e-20, car);
  y = zeros(rows_of(car.hoses), 1);
  for h = 1:rows_of(car.hoses)
    at = p(car.hoses(h, 1));
    long = car.hoses(h, 2); inside = car.hoses(h, 3);
    share = [0.45, 1, 0.22](car.hoses(h, 4));
    if !isnan(car.hoses(h, 5))
      share = car.hoses(h, 5) / hose_ceiling(inside, c.hose_psi(1), c);
    end
    if car.in_case(1) == 1 % all good: at most that
      share = min(share, 0.45);
    elseif car.in_case(1) == 2 % all worn: at least that
      share = max(share, 1);
    end
    y(h) = share * long * hose_ceiling(inside, at, c) + fluid(pi * inside ^ 2 / 4 * long, at);
  end
  [r, slope] = set_parts(r, slope, x, car.at_hose, car.hoses(:, 1), real(y), imag(y) / 1e-20, car);
  y = fluid(car.chambers(:, 2), p(car.chambers(:, 1)));
  [r, slope] = set_parts(r, slope, x, car.at_chamber, car.chambers(:, 1), real(y), imag(y) / 1e-20, car);
  if !isempty(car.discs)
    d = car.discs;
    at = p(d(:, 1));
    pistons = pi / 4 * (d(:, 3) .* d(:, 4) .^ 2 + d(:, 5) .* d(:, 6) .^ 2);
    side = pistons ./ (1 + (d(:, 2) == 1));
    fixed = d(:, 2) == 1;
    gaps = d(:, 8) .* (1 + fixed); % of both pads together, each as far as its piston rolls back
    if car.in_case(3) % knocked back by run-out and bearing play, the brake let go at one end
      gaps = max(gaps, d(:, 11) + d(:, 12) + fixed .* d(:, 8));
    end
    elastic = 2 * d(:, 9) + d(:, 10); % of both pads and the body, at 10 MPa
    said = !isnan(d(:, 13)); % all of the way of a piston was measured
    elastic(said) = max((1 + fixed(said)) .* (d(said, 13) - d(said, 8)), 0);
    y = side .* gaps .* touched(at, d(:, 7)) + side .* elastic .* at / 10e6;
    [r, slope] = set_parts(r, slope, x, car.at_disc, d(:, 1), real(y), imag(y) / 1e-20, car);
  end
  if !isempty(car.drums)
    d = car.drums;
    at = p(d(:, 1));
    bore = pi * d(:, 2) .^ 2 / 4;
    clearance = d(:, 4) * (1 + 2 * car.in_case(2)); % adjusters not set: three times
    give = d(:, 5);
    said = !isnan(d(:, 6)); % all of the way of a piston was measured
    give(said) = max(d(said, 6) - d(said, 4), 0);
    y = 2 * bore .* clearance .* touched(at, d(:, 3)) + 2 * bore .* give .* at / 10e6;
    [r, slope] = set_parts(r, slope, x, car.at_drum, d(:, 1), real(y), imag(y) / 1e-20, car);
  end
end

function [r, slope] = circuit_residuals(r, slope, x, car, c)
  for k = 1:rows_of(car.circuits)
    first = car.at_domain(find(car.domains(:, 1) == k & car.domains(:, 2) == 0));
    m = car.circuits(k, 1);
    at = car.at_air(k);
    [lost, rate] = air_lost(x(car.at_domain), find(car.domains(:, 1) == k), car, c);
    r(at) = x(at) - lost;
    slope(at, car.at_domain(car.domains(:, 1) == k)) = -rate;
    takers = [at, car.takers{k}];
    share = ones(1, numel(takers));
    more = 0;
    if car.servo.type == 2 % all but the first domain lies beyond the servo
      [~, helps] = remote_law(x(first), car.servo, c);
      if helps || !car.servo.passes
        share(ismember(takers, car.beyond)) = car.servo.before;
        more = (1 - car.servo.before) * car.servo.passes * car.passed + helps * car.servo.valve;
        of = find(car.domains(:, 2) != 0);
        [lost, rate] = air_lost(x(car.at_domain), of, car, c);
        more -= (1 - car.servo.before) * lost;
        slope(car.at_volume(k), car.at_domain(of)) = (1 - car.servo.before) * rate;
      end
    end
    r(car.at_volume(k)) = x(car.at_volume(k)) - share * x(takers)(:) - more;
    slope(car.at_volume(k), takers) -= share;
    area = pi * car.masters(m, 2) ^ 2 / 4;
    at = car.at_stroke(k);
    if k == car.lost % its piston goes all its way
      r(at) = x(at) - piston_end(car, k);
      continue
    end
    port = car.masters(m, 4);
    carried = car.masters(m, 7) >= car.masters(m, 8) + car.masters(m, 9);
    if car.circuits(k, 2) == 1 && carried % the second piston goes with the first past both ports
      port = 0;
    end
    r(at) = x(at) - port - x(car.at_volume(k)) / area;
    slope(at, car.at_volume(k)) = -1 / area;
  end
end

function y = touched(p, threshold) % share of a clearance that is taken up
  t = threshold + zeros(size(p));
  y = ones(size(p));
  part = real(p) < t;
  y(part) = p(part) ./ t(part);
end

function which = in_circuit(car, parts, k)
  which = [];
  if !isempty(parts)
    which = find(car.domains(parts(:, 1), 1) == k)';
  end
end

function y = piston_end(car, k) % stroke that the piston of a circuit has
  m = car.circuits(k, 1);
  y = car.masters(m, 3);
  if car.masters(m, 1) == 1
    y /= 2;
  end
end

function [x, fine] = newton(car, stop, start, c)
  fine = false;
  x = start;
  for step = 1:60
    [r, slope] = residuals(x .* car.scale, car, stop, c);
    change = -(slope \ r);
    if any(!isfinite(change))
      return
    end
    if mod(step, 9) == 0 % where it goes to and fro across a kink of some law
      change /= 2;
    end
    x += change;
    x(car.at_domain) = max(x(car.at_domain), 0);
    x(1) = max(x(1), 0);
    moved = max(abs(change) ./ (abs(x) + 1e-6));
    if moved < 1e-13 || (step > 15 && moved < 1e-11)
      fine = max(abs(residuals(x .* car.scale, car, stop, c))) < 1e-7;
      return
    end
  end
end

function x = guess(car)
  x = zeros(car.count, 1);
  x(1) = car.effort / 100;
  x(2:3) = car.ratio * car.effort / 100;
  x(car.at_rod) = 30;
  x(car.at_domain) = 3;
end

% The end that is passed by most of itself, 0 when none is.
function stop = passed(x, car)
  x = x .* car.scale;
  stop = 0;
  most = 1 + 1e-12;
  if x(5) / car.travel > most
    stop = 1;
    most = x(5) / car.travel;
  end
  for k = 1:rows_of(car.circuits)
    if k != car.lost && x(car.at_stroke(k)) / piston_end(car, k) > most
      stop = 2 + k;
      most = x(car.at_stroke(k)) / piston_end(car, k);
    end
  end
end

% The effort at which the servo jumps; none: infinite.
function effort = jump_effort(car)
  effort = Inf;
  s = car.servo;
  rod = Inf;
  if s.assisted && s.type == 1
    rod = s.cut_in;
  elseif s.assisted && s.type == 2
    rod = rod_for(car, s.line_cut_in);
  end
  effort = rod / (car.efficiency * car.ratio) + car.spring;
end

% Force on the rod of a single master for a pressure.
function rod = rod_for(car, p)
  rod = (p * pi * car.masters(1, 2) ^ 2 / 4 + car.masters(1, 7) + car.masters(1, 9)) / car.masters(1, 6);
end

function [x, fine] = at_effort(car, effort, start, c)
  car.effort = effort;
  [x, fine] = newton(car, 0, start, c);
  if !fine
    [x, fine] = newton(car, 0, guess(car), c);
  end
end

% Where an end is passed at the effort asked: the end takes the effort's place in the equations. Which
% end it is, and whether it lies within the servo's jump, is tried first.
function [x, stop, fine] = solve_car(car, c)
  [x, fine] = at_effort(car, car.effort, guess(car), c);
  stop = 0;
  if fine
    stop = passed(x, car);
  end
  if !fine || stop == 0
    return
  end
  [rest, fine] = at_effort(car, 0, x, c);
  if fine && passed(rest, car) > 0 % too far before it pushes anything: it rests there
    x = rest;
    stop = passed(rest, car);
    if stop == 1
      x(5) = car.travel / car.scale(5);
    end
    return
  end
  low = 0; high = car.effort;
  jump = jump_effort(car);
  if jump < high
    [over, fine] = at_effort(car, jump * (1 + 1e-12), x, c);
    [under, fine_too] = at_effort(car, jump * (1 - 1e-12), x, c);
    if !fine || !fine_too
      fine = false;
      return
    end
    if passed(under, car) > 0
      high = jump * (1 - 1e-12); x = under;
    elseif passed(over, car) > 0
      [x, stop] = within_jump(under, over, car);
      return
    else
      low = jump;
    end
  end
  for i = 1:40
    stop = passed(x, car);
    [last, fine] = newton(car, stop, x, c);
    effort = last(1) * car.scale(1);
    if fine && passed(last, car) == 0 && effort >= low * (1 - 1e-9) && effort <= high * (1 + 1e-9)
      x = last;
      return
    end
    [middle, fine] = at_effort(car, (low + high) / 2, x, c);
    if !fine
      return
    end
    if passed(middle, car) > 0
      high = (low + high) / 2; x = middle;
    else
      low = (low + high) / 2;
    end
  end
  fine = false;
end

% The pedal stays at the effort of the jump with the pressures from below it; where the floor is the
% end that the jump would meet first, it stands there.
function [x, stop] = within_jump(under, over, car)
  x = under;
  stop = 2;
  past_bore = -Inf;
  for k = 1:rows_of(car.circuits)
    at = car.at_stroke(k);
    if k != car.lost
      past_bore = max([past_bore, over(at) * car.scale(at) - piston_end(car, k)]);
    end
  end
  if over(5) * car.scale(5) - car.travel >= car.ratio * max(past_bore, 0)
    stop = 1;
    x(5) = car.travel / car.scale(5);
    x(4) = (car.travel - car.play - x(1) * car.scale(1) / car.stiffness) / car.ratio / car.scale(4);
  end
end

c = constants();
warning('off', 'all');
table = load(argv(){end});
first = find([true; diff(table(:, 1)) != 0]);
last = [first(2:end) - 1; rows(table)];
compared = 0; stopped = 0; worst = 0;
for i = 1:numel(first)
  car = read_car(table(first(i):last(i), :), c);
  [x, stop, fine] = solve_car(car, c);
  if !fine
    printf('car %d: no solution\n', table(first(i), 1));
    continue
  end
  x = x .* car.scale;
  theirs = [x(5), x(1), x(4), 0, 0, 0, 0];
  for w = 1:4
    if car.wheels(w) > 0
      theirs(3 + w) = x(car.at_domain(car.wheels(w)));
    end
  end
  ours = car.answer(1:7);
  off = abs(theirs - ours) ./ max(abs(ours), [1e-3, 1, 1e-4, 1e3, 1e3, 1e3, 1e3]);
  if car.answer(8) != 0
    % The program looks for an end to a thousandth of a millionth of the effort asked, so all but the
    % travel itself is as near as that.
    off = [off(1), abs(theirs(2) - ours(2)) / (2 * car.effort)];
  end
  if max(off) > 1e-9
    fprintf(stderr, 'car %d: stop %d (theirs %d), off %s\n', table(first(i), 1), stop, ...
            car.answer(8), mat2str(off, 3));
  end
  compared += 1;
  stopped += car.answer(8) != 0;
  worst = max(worst, max(off));
end
printf('%d cars, %d stopped, worst %.3g\n', compared, stopped, worst);
