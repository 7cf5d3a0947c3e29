"""Reviews a file in the parts that Spark cuts it into, and compares with a single run, byte for byte."""

import subprocess
import sys
import time

from pyspark import SparkConf, SparkContext

program, records = sys.argv[1:]
PARTS = 8

conf = SparkConf().setMaster("local[*]").setAppName("oxyfolio review").set("spark.ui.enabled", "false")
spark = SparkContext(conf=conf)
spark.setLogLevel("ERROR")

start = time.monotonic()
# checkCode stays off: exit code 1 says that there are findings, 3 that lines could not be read.
found = spark.textFile(records, PARTS).pipe(f"{program} review --format ndjson --threads 1 -").collect()
spark_seconds = time.monotonic() - start
parts = spark.textFile(records, PARTS).getNumPartitions()
spark.stop()

start = time.monotonic()
with open(records, "rb") as text:
    single = subprocess.run([program, "review", "--format", "ndjson", "-"], stdin=text, capture_output=True)
single_seconds = time.monotonic() - start
assert single.returncode == 3, single.returncode
expected = single.stdout.decode().splitlines()

assert expected, "no findings"
# Spark keeps the order of the parts; sorted all the same, for it promises none.
if sorted(found) != sorted(expected):
    sys.exit(f"error: {len(found)} findings under Spark, {len(expected)} in a single run, and they differ")
print(
    f"{len(expected)} findings, the same bytes in {parts} parts under Spark ({spark_seconds:.1f} s) "
    f"and in a single run ({single_seconds:.1f} s); in the same order: {found == expected}"
)
