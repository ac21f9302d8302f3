//go:build unix && race

package main

// watched is how many times as long a program may take to end that is watched for races.
const watched = 4
