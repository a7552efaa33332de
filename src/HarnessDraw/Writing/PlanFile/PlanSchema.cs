namespace HarnessDraw.Writing.PlanFile;

/// <summary>The published form of NAME.plan.json: a JSON Schema (draft 7) that a test holds the writer to.</summary>
public static class PlanSchema
{
    /// <summary>Raised when a name or a meaning in the file changes.</summary>
    public const int Version = 1;

    /// <summary>The schema as text.</summary>
    public const string Text = """
        {
          "$schema": "http://json-schema.org/draft-07/schema#",
          "title": "Harness plan",
          "description": "What was worked out from a harness description. Lengths in mm, currents in A, volts against the grounded pole. Null: not known.",
          "type": "object",
          "properties": {
            "schemaVersion": { "description": "Raised when a name or a meaning changes.", "type": "integer", "enum": [1] },
            "harness": { "description": "Name of the description file.", "type": "string" },
            "title": { "type": "string" },
            "vehicle": { "type": "string" },
            "sourceHash": { "type": "string" },
            "buildCount": { "description": "Number of valid builds.", "type": "integer" },
            "wires": { "type": "array", "items": { "$ref": "#/definitions/wire" } },
            "segments": {
              "type": "array",
              "items": {
                "type": "object",
                "properties": {
                  "id": { "type": "string" },
                  "from": { "description": "End nearer the root.", "type": "string" },
                  "to": { "type": "string" },
                  "lengthMm": { "type": ["number", "null"] },
                  "wires": { "type": "array", "items": { "type": "string" } },
                  "diameterMm": { "description": "Covering included, worst valid build.", "type": "number" },
                  "covering": { "type": ["string", "null"] }
                },
                "required": ["id", "from", "to", "lengthMm", "wires", "diameterMm", "covering"],
                "additionalProperties": false
              }
            },
            "splices": {
              "type": "array",
              "items": {
                "type": "object",
                "properties": {
                  "id": { "type": "string" },
                  "circuit": { "type": "string" },
                  "segment": { "type": "string" },
                  "atMm": { "description": "From the segment's 'from' place.", "type": "number" },
                  "wires": { "description": "Feed first.", "type": "array", "items": { "type": "string" } }
                },
                "required": ["id", "circuit", "segment", "atMm", "wires"],
                "additionalProperties": false
              }
            },
            "cavities": {
              "type": "array",
              "items": {
                "type": "object",
                "properties": {
                  "connector": { "type": "string" },
                  "side": { "type": "string", "enum": ["bay", "cabin"] },
                  "cavity": { "type": "string" },
                  "wire": { "type": ["string", "null"] },
                  "builds": { "$ref": "#/definitions/builds" },
                  "plug": { "type": ["string", "null"] }
                },
                "required": ["connector", "side", "cavity", "wire", "builds", "plug"],
                "additionalProperties": false
              }
            },
            "fuses": {
              "type": "array",
              "items": {
                "type": "object",
                "properties": {
                  "id": { "type": "string" },
                  "kind": { "type": "string", "enum": ["bolt-in", "blade", "fusible link", "breaker"] },
                  "ratingA": { "type": ["number", "null"] },
                  "largestA": { "description": "Largest standard rating that all behind it bears.", "type": ["number", "null"] },
                  "loadA": { "description": "Largest steady current in the worst build and state.", "type": ["number", "null"] },
                  "loadState": { "description": "The state that loads it most.", "type": ["string", "null"] },
                  "why": { "description": "Rule that decided the rating.", "type": ["string", "null"] },
                  "wires": { "type": "array", "items": { "type": "string" } }
                },
                "required": ["id", "kind", "ratingA", "largestA", "loadA", "loadState", "why", "wires"],
                "additionalProperties": false
              }
            },
            "options": {
              "type": "array",
              "items": {
                "type": "object",
                "properties": { "id": { "type": "string" }, "choices": { "type": "array", "items": { "type": "string" } }, "usual": { "type": "string" } },
                "required": ["id", "choices", "usual"],
                "additionalProperties": false
              }
            },
            "findings": {
              "type": "array",
              "items": {
                "type": "object",
                "properties": {
                  "rule": { "type": "string" },
                  "severity": { "type": "string", "enum": ["error", "warning", "advice"] },
                  "message": { "type": "string" },
                  "where": { "type": "array", "items": { "type": "string" } },
                  "builds": { "$ref": "#/definitions/builds" },
                  "waivedBecause": { "type": ["string", "null"] }
                },
                "required": ["rule", "severity", "message", "where", "builds", "waivedBecause"],
                "additionalProperties": false
              }
            },
            "nodes": {
              "type": "array",
              "items": {
                "type": "object",
                "properties": {
                  "node": { "description": "Pin of a thing, or a splice.", "type": "string" },
                  "volts": { "description": "By state.", "type": "object", "additionalProperties": { "type": ["number", "null"] } }
                },
                "required": ["node", "volts"],
                "additionalProperties": false
              }
            },
            "layout": {
              "type": "object",
              "properties": {
                "crossings": { "type": ["integer", "null"] },
                "crossingsStraightLaneBound": { "type": ["integer", "null"] },
                "crossingsLowerBound": { "type": ["integer", "null"] },
                "reason": { "description": "Why a bound is null.", "type": ["string", "null"] },
                "paper": { "type": ["string", "null"] },
                "refused": { "description": "Why there is no wall chart.", "type": ["string", "null"] }
              },
              "required": ["crossings", "crossingsStraightLaneBound", "crossingsLowerBound", "reason", "paper", "refused"],
              "additionalProperties": false
            }
          },
          "required": [
            "schemaVersion",
            "harness",
            "title",
            "vehicle",
            "sourceHash",
            "buildCount",
            "wires",
            "segments",
            "splices",
            "cavities",
            "fuses",
            "options",
            "findings",
            "nodes",
            "layout"
          ],
          "additionalProperties": false,
          "definitions": {
            "end": {
              "type": "object",
              "properties": {
                "at": { "description": "Thing or splice.", "type": "string" },
                "pin": { "description": "Pin of the thing; null at a splice.", "type": ["string", "null"] },
                "terminal": { "description": "Terminal of the catalogue.", "type": ["string", "null"] },
                "seal": { "type": ["string", "null"] },
                "strip": { "description": "Strip length, mm.", "type": ["number", "null"] }
              },
              "required": ["at", "pin", "terminal", "seal", "strip"],
              "additionalProperties": false
            },
            "builds": {
              "description": "The builds it is in: option to the choices allowed; empty is every build.",
              "type": "object",
              "additionalProperties": { "type": "array", "items": { "type": "string" } }
            },
            "wire": {
              "type": "object",
              "properties": {
                "id": { "type": "string" },
                "circuit": { "type": "string" },
                "net": { "type": "string" },
                "cable": { "type": ["string", "null"] },
                "from": { "$ref": "#/definitions/end" },
                "to": { "$ref": "#/definitions/end" },
                "colour": { "description": "IEC 60757 letters, base/tracer.", "type": "string" },
                "areaMm2": { "type": "number" },
                "awg": { "description": "Null for metric wire.", "type": ["string", "null"] },
                "pathLengthMm": { "description": "Along the segments, exact.", "type": ["number", "null"] },
                "cutLengthMm": { "description": "With allowances, rounded up.", "type": ["number", "null"] },
                "estimated": { "type": "boolean" },
                "segments": { "type": "array", "items": { "type": "string" } },
                "builds": { "$ref": "#/definitions/builds" },
                "worst": {
                  "type": ["object", "null"],
                  "properties": {
                    "state": { "type": "string" },
                    "currentA": { "type": "number" },
                    "dropV": { "type": "number" },
                    "temperatureC": { "description": "Conductor, degrees Celsius.", "type": "number" }
                  },
                  "required": ["state", "currentA", "dropV", "temperatureC"],
                  "additionalProperties": false
                },
                "ampacityA": { "type": ["number", "null"] },
                "protectedBy": { "description": "Nearest first.", "type": "array", "items": { "type": "string" } },
                "decidedBy": { "description": "Rule that decided the size.", "type": "string" },
                "runnerUp": { "type": ["string", "null"] },
                "margin": { "description": "Part of the limit that is left.", "type": ["number", "null"] }
              },
              "required": [
                "id",
                "circuit",
                "net",
                "cable",
                "from",
                "to",
                "colour",
                "areaMm2",
                "awg",
                "pathLengthMm",
                "cutLengthMm",
                "estimated",
                "segments",
                "builds",
                "worst",
                "ampacityA",
                "protectedBy",
                "decidedBy",
                "runnerUp",
                "margin"
              ],
              "additionalProperties": false
            }
          }
        }

        """;
}
