// Package branch solves integer programs and leaves a certificate for what it says.
package branch
