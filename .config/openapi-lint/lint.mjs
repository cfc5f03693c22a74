// node lint.mjs DOCUMENT: what Redocly's strict rules and a few more find in an OpenAPI document.
import { createConfig, formatProblems, getTotals, lint } from '@redocly/openapi-core';

const config = await createConfig({
  extends: ['recommended-strict'],
  rules: {
    // beyond the recommended ones
    'component-name-unique': 'error',
    'no-invalid-parameter-examples': 'error',
    'no-invalid-schema-examples': 'error',
    'no-required-schema-properties-undefined': 'error',
    'operation-4xx-problem-details-rfc7807': 'error',
    'operation-tag-defined': 'error',
    'parameter-description': 'error',
    'paths-kebab-case': 'error',
  },
});
const problems = await lint({ ref: process.argv[2], config });
const totals = getTotals(problems);
formatProblems(problems, { format: 'stylish', totals, version: 'openapi-core' });
process.exitCode = problems.length === 0 ? 0 : 1;
