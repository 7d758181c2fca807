// Solves pipe networks with the reference engine: a JSON list of { inp, repeats } in, a JSON list of answers out, in the engine's own units
// (feet, cubic feet a second). With repeats it also takes the time, in milliseconds: all of it, and the solving alone.
import { readFileSync, writeFileSync } from "node:fs";
import { Project, Workspace, NodeProperty, LinkProperty, CountType, InitHydOption } from "epanet-js";

// The engine's warnings go to the console; the answer carries their number.
console.warn = () => {};

const workspace = new Workspace();
await workspace.loadModule();

function values(project, count, idOf, valueOf) {
  const found = {};
  for (let index = 1; index <= count; index++) {
    found[idOf.call(project, index)] = valueOf(index);
  }
  return found;
}

function solveOnce(project) {
  const begin = performance.now();
  project.openH();
  project.initH(InitHydOption.InitFlow);
  const opened = performance.now();
  project.runH();
  const solved = performance.now();
  return { all: solved - begin, solving: solved - opened };
}

function answer({ inp, repeats }) {
  workspace.writeFile("network.inp", inp);
  const project = new Project(workspace);
  project.open("network.inp", "report.rpt", "out.bin");
  const times = [];
  for (let k = 1; k < (repeats ?? 1); k++) {
    times.push(solveOnce(project));
    project.closeH();
  }
  times.push(solveOnce(project));
  const nodes = project.getCount(CountType.NodeCount);
  const result = {
    heads: values(project, nodes, project.getNodeId, (index) => project.getNodeValue(index, NodeProperty.Head)),
    pressures: values(project, nodes, project.getNodeId, (index) => project.getNodeValue(index, NodeProperty.Pressure)),
    demands: values(project, nodes, project.getNodeId, (index) => project.getNodeValue(index, NodeProperty.Demand)),
    flows: values(project, project.getCount(CountType.LinkCount), project.getLinkId, (index) => project.getLinkValue(index, LinkProperty.Flow)),
    rounds: project.getStatistic(0),
    times,
  };
  project.closeH();
  project.close();
  return result;
}

const [input, output] = process.argv.slice(2);
writeFileSync(output, JSON.stringify(JSON.parse(readFileSync(input, "utf8")).map(answer)));
