import { prepare, rankChecks, answer, rankBands, weightsOfEvidence, type Check, type Net, type EvidenceItem } from '../../lib/inference/index';
import { seededNet, simulatedCase, observed, range } from '../independent/inference/seeded-net';
const yn=[[0,1],[1,0]];
function checks(net:Net):Check[]{const open=range(0,net.gates.length).filter(g=>net.gates[g]!.weights[0]===net.gates[g]!.weights[1]).slice(0,60);return open.map((gate,i)=>({on:{kind:'gate',gate},outcomes:yn,cost:1+(i%7)}) as Check);}
const med=(a:number[],q:number)=>[...a].sort((x,y)=>x-y)[Math.floor(q*(a.length-1))]!;
for (const [name,net] of [['70x80',seededNet(70,80,4,14,11)],['600x4000',seededNet(600,4000,5,15,3)]] as const)
for (const m of name==='70x80'?[5,10,12,15,20]:[10,20]) {
  const A:number[]=[],P:number[]=[],B:number[]=[],W:number[]=[],X:number[]=[];
  const N=m===20&&name==='70x80'?20:60;
  const nets=range(0,N).map(i=>simulatedCase(net,m,15,100+i));
  const cks=nets.map(checks);
  for (let i=0;i<N+5;i++){const k=i%N;
    let t=performance.now(); const r=prepare(nets[k]!); const t1=performance.now(); if(r.kind!=='prepared'){console.log(r.kind,JSON.stringify((r as any).cost));continue;}
    rankChecks(r.prepared,cks[k]!); const t2=performance.now();
    if(i>=5){A.push(t2-t);P.push(t1-t);W.push(Math.log2(r.prepared.cost.width));X.push(r.prepared.cost.units);
     if(m<=15){const t3=performance.now();rankBands(r.prepared);B.push(performance.now()-t3);} }
  }
  console.log(name,m,'prepare',med(P,.5).toFixed(2),med(P,.95).toFixed(2),'whole',med(A,.5).toFixed(2),med(A,.95).toFixed(2),'width',med(W,.5),med(W,1),'units',med(X,.5),med(X,1),'bands',B.length?med(B,.5).toFixed(1):'');
}
