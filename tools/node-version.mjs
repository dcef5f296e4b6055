// Plain and old-fashioned on purpose: this file must be understood by the very Node it turns away.
var needed = [20, 19];

export function demandNode() {
  var parts = process.versions.node.split(".").map(Number);
  if (parts[0] > needed[0] || (parts[0] === needed[0] && parts[1] >= needed[1])) return;
  console.error(
    "Underbench needs Node.js " +
      needed.join(".") +
      " or newer; this is " +
      process.versions.node +
      ". Install a newer Node.js and try again.",
  );
  process.exit(1);
}
