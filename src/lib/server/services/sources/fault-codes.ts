export { FAULT_CODES, type Fault, type FaultCode } from '../../weather/source/contract.ts';
