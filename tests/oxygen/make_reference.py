"""Writes what the tests of the oxygen room compare with, from the general-purpose reference library CoolProp (PyPI
`CoolProp`, 8.0.0), whose oxygen is the equation of state of Schmidt and Wagner, Fluid Phase Equilibria 19 (1985) 175-200:

- density.csv: densities at points between those of the library's own table, and at the edges of the domain;
- equation.csv: the coefficients of the equation, as CoolProp holds them.

Run in this folder: pip install CoolProp==8.0.0 && python make_reference.py
"""

import json

from CoolProp import __version__
from CoolProp.CoolProp import PropsSI, get_fluid_param_string

SOURCE = (
    f"CoolProp {__version__}, fluid Oxygen: equation of state of Schmidt and Wagner, Fluid Phase Equilibria 19 (1985) 175-200"
)
EDGES_C, EDGES_BAR = (-40.0, 60.0), (0.001, 301.01325)
# An odd number of steps of 2.5 °C and about 6 bar: none falls on a multiple of 5.
BETWEEN_C = [-38.75 + 2.5 * step for step in range(40)]
BETWEEN_BAR = [round(2.98 + 5.96 * step, 2) for step in range(50)]


def density():
    yield f"# {SOURCE}; fitted to 300 K, above which it is extrapolated. Written by make_reference.py."
    yield "temperature_c,pressure_bar_abs,density_kg_m3"
    for celsius in sorted([*EDGES_C, *BETWEEN_C]):
        for bar in sorted([*EDGES_BAR, *BETWEEN_BAR]):
            found = PropsSI("D", "P", bar * 1e5, "T", celsius + 273.15, "Oxygen")
            yield f"{celsius},{bar},{found:.9g}"


def equation():
    state = json.loads(get_fluid_param_string("Oxygen", "JSON"))[0]["EOS"][0]
    reducing = state["STATES"]["reducing"]
    (terms,) = state["alphar"]
    assert terms["type"] == "ResidualHelmholtzPower"
    yield f"# {SOURCE}. Written by make_reference.py."
    yield "reducing_temperature_k,reducing_density_mol_m3,gas_constant_j_mol_k,molar_mass_kg_mol"
    yield f"{reducing['T']},{reducing['rhomolar']},{state['gas_constant']},{state['molar_mass']}"
    yield "n,d,t,l"
    for row in zip(terms["n"], terms["d"], terms["t"], terms["l"], strict=True):
        yield ",".join(str(cell) for cell in row)


for name, lines in (("density.csv", density()), ("equation.csv", equation())):
    with open(name, "w", encoding="utf-8", newline="\n") as file:
        file.writelines(f"{line}\n" for line in lines)
