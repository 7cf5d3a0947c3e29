"""Writes run records of an invented service to standard output: NDJSON, so many events in all."""

import sys

EVENTS = int(sys.argv[1])
PER_RUN = 25
STEPS = [
    '"do":"fetch-cylinder","cylinder":"D"',
    '"do":"secure-cylinder"',
    '"do":"open-cylinder","pressure_psi":1850',
    '"do":"connect-device","device":"nasal-cannula"',
    '"do":"set-flow","flow_lpm":4',
    '"do":"place-device","spo2_percent":91',
]
out = []
for run in range(EVENTS // PER_RUN):
    events = []
    for index in range(PER_RUN):
        if index < len(STEPS):
            said = STEPS[index]
        else:
            said = f'"do":"watch-patient","spo2_percent":{92 + index % 5},"pressure_psi":{1850 - 9 * index}'
        # Here and there a mistake: a unit that is missing, a device that isn't the book's.
        if run % 50 == 7 and index == 4:
            said = '"do":"set-flow","flow":4'
        if run % 50 == 9 and index == 3:
            said = '"do":"connect-device","device":"mask"'
        at = f"2026-{1 + run % 12:02}-{1 + run % 28:02}T{run % 24:02}:{index:02}:{run % 60:02}+01:00"
        events.append(f'{{"at":"{at}",{said},"by":"crew-{run % 40}"}}')
    if run % 1000 == 500:
        out.append('{"run":"LV-broken')
    out.append(f'{{"run":"LV-{run:07}","group":"adult","conditions":[],"temperature_c":{10 + run % 15},"events":[{",".join(events)}]}}')
    if len(out) >= 2000:
        print("\n".join(out))
        out.clear()
if out:
    print("\n".join(out))
