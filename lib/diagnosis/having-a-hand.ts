import { answer, type Answer, type Net } from '../inference';
import { atWorkNow, type CaseNet } from './build-net';

/**
 * Per cause: chance that it is at work now *and* had a hand in something that was found, i.e. that at least one of its
 * links to a looked-at finding fired.
 *
 * A cause that nothing told points to keeps its usual chance of being there, but did not make this print fail; ranking by
 * mere presence would put every common nuisance before a rarer culprit. Exact: presence, less presence with no link fired,
 * which is the evidence of a net in which the cause is there and silent. Without any finding that was there, presence itself.
 * Worked: prior 0.1, one finding seen through a link of 0.8, leak 0.02: present 0.81707, present but silent
 * 0.1 · 0.2 · 0.02 / 0.0984 = 0.00407, so a hand in it 0.81301.
 */
export function havingAHand(net: CaseNet, known: Answer): number[] {
  const present = known.states.map(atWorkNow);
  const found = net.gates.some((gate) => gate.items.some((item) => item.kind === 'reading' || (item.kind === 'symptom' ? item.seen : item.yes)));
  if (!found) return present;
  const linked = new Set(net.net.gates.flatMap((gate) => gate.links.map((link) => link.cause)));
  return present.map((chance, cause) => {
    if (!linked.has(cause)) return 0;
    return Math.max(0, chance - presentButSilent(net.net, known, cause));
  });
}

function presentButSilent(net: Net, known: Answer, cause: number): number {
  let silent = 1;
  const gates = net.gates.map((gate) => {
    const link = gate.links.find((each) => each.cause === cause);
    if (!link) return gate;
    silent *= link.contributes[link.contributes.length - 1]?.[0] ?? 1;
    return { ...gate, links: gate.links.filter((each) => each !== link) };
  });
  const causes = net.causes.map((each, index) => (index === cause ? { weights: each.weights.map((weight, state) => (state === each.weights.length - 1 ? weight * silent : 0)) } : each));
  const outcome = answer({ ...net, causes, gates });
  return outcome.kind === 'answer' ? Math.exp(outcome.logEvidence - known.logEvidence) : 0;
}
