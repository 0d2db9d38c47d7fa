% Single strokes of bleeding with the nipple shut under pressure, integrated by lsode, from rows of
% numbers; tests/cross/bleed_strokes.c says what stands in them. To be compared with the program.
%
%   octave-cli bleed_strokes.m FILE
%
% prints "N strokes, worst W": how many were compared, and the greatest difference of the volume that
% came out of the nipple, as a part of that volume.
%
% The whole tree is integrated: each leg resists, at the far end of each stands the air that is in it
% and in its pots. Unknowns are the volumes that the air has taken up; they give the pressures where
% there is air (Boyle), and the balance of flow gives them where there is none.

1;

function q = out_at(p, lin, sq) % flow through the nipple for a pressure
  if sq > 0
    q = (-lin + sqrt(lin ^ 2 + 4 * sq * max(p, 0))) / (2 * sq);
  else
    q = p / lin;
  end
end

function [p, out] = pressures(w, t)
  n = rows(t.legs);
  p = zeros(n, 1);
  has = t.air > 0;
  p(has) = t.atmosphere * w(has) ./ (t.air(has) - w(has));
  free = find(!has);
  for tries = 1:60 % Newton on the balances of the nodes without air
    [b, J, out] = balance(p, t);
    if isempty(free)
      break
    end
    step = J(free, free) \ b(free);
    p(free) -= step;
    if max(abs(step)) < 1e-9 * (1 + max(abs(p)))
      [b, J, out] = balance(p, t);
      break
    end
  end
end

function [b, J, out] = balance(p, t) % what flows into each node less what leaves it
  n = numel(p);
  b = zeros(n, 1);
  J = zeros(n, n);
  b(1) = t.inflow;
  for k = 2:n
    a = t.above(k);
    q = (p(a) - p(k)) / t.R(k);
    b(k) += q;
    b(a) -= q;
    J(k, k) -= 1 / t.R(k);
    J(k, a) += 1 / t.R(k);
    J(a, a) -= 1 / t.R(k);
    J(a, k) += 1 / t.R(k);
  end
  out = out_at(p(t.last), t.lin, t.sq);
  b(t.last) -= out;
  d = 1e-3 + 1e-7 * abs(p(t.last));
  J(t.last, t.last) -= (out_at(p(t.last) + d, t.lin, t.sq) - out) / d;
end

function dw = change(w, t)
  p = pressures(w, t);
  b = balance(p, t);
  dw = b .* (t.air > 0);
end

rows_of = dlmread(argv(){1});
at = 1;
strokes = 0;
worst = 0;
while at <= rows(rows_of)
  head = rows_of(at, :);  % legs, last leg, stroke, time, density, viscosity, share out, answer
  n = head(1);
  legs = rows_of(at + (1:n), :); % above, length, bore, volume, air in it, air in its pots
  at += n + 1;
  t = struct('atmosphere', 101325, 'legs', legs, 'last', head(2), 'inflow', head(3) / head(4));
  t.above = legs(:, 1);
  mu = head(5) * head(6);
  fluid = 1 - legs(:, 5) ./ legs(:, 4);
  t.R = max(8 * mu * legs(:, 2) ./ (pi * (legs(:, 3) / 2) .^ 4) .* fluid, 1e6);
  t.air = legs(:, 5) + legs(:, 6);
  % the nipple: 1.5 mm, 8 mm long, two velocity heads; air passes it freely
  r = 0.75e-3;
  t.lin = max(head(7) * 8 * mu * 8e-3 / (pi * r ^ 4), 1e6);
  t.sq = head(7) * head(5) / (pi * r ^ 2) ^ 2;
  lsode_options('relative tolerance', 1e-8);
  lsode_options('absolute tolerance', 1e-14);
  [w, state, message] = lsode(@(w, s) change(w, t), zeros(n, 1), [0; head(4)]);
  if state != 2
    error('stroke %d: %s', strokes + 1, message);
  end
  out = head(3) - sum(w(end, :));
  difference = abs(head(8) / out - 1);
  if getenv('SHOW')
    printf('%d: out %.6g ours %.6g, %.2g\n', strokes + 1, out, head(8), difference);
  end
  worst = max(worst, difference);
  strokes++;
end
printf('%d strokes, worst %.3g\n', strokes, worst);
