import { prepare, rankChecks, type Check, type Net } from '../../lib/inference/index';
import { seededNet, simulatedCase, range } from '../independent/inference/seeded-net';
const yn=[[0,1],[1,0]];
function checks(net:Net):Check[]{const open=range(0,net.gates.length).filter(g=>net.gates[g]!.weights[0]===net.gates[g]!.weights[1]).slice(0,60);return open.map((gate,i)=>({on:{kind:'gate',gate},outcomes:yn,cost:1+(i%7)}) as Check);}
const net=seededNet(70,80,4,14,11);
const nets=range(0,20).map(i=>simulatedCase(net,10,15,100+i));
const cks=nets.map(checks);
for(let i=0;i<300;i++){const r=prepare(nets[i%20]!); if(r.kind==='prepared') rankChecks(r.prepared,cks[i%20]!);}
