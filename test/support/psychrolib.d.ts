/** The part of psychrolib that the tests use; it comes without types. Temperatures in °C, pressures in Pa. */
declare module 'psychrolib' {
  interface Psychrolib {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(t: number): number;
    GetSatHumRatio(t: number, pressure: number): number;
    GetTDewPointFromRelHum(t: number, relativeHumidity: number): number;
    GetHumRatioFromRelHum(t: number, relativeHumidity: number, pressure: number): number;
    GetMoistAirDensity(t: number, humidityRatio: number, pressure: number): number;
    GetMoistAirEnthalpy(t: number, humidityRatio: number): number;
  }
  const psychrolib: Psychrolib;
  export default psychrolib;
}
