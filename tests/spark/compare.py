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
# Without --exit-0 findings would be a failure to Scala's RDD.pipe, and to Python's with checkCode.
command = f"{program} review --format ndjson --exit-0 --threads 1 -"
found = spark.textFile(records, PARTS).pipe(command, checkCode=True).collect()
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
