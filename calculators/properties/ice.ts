/** Conductivity of ice at 0 °C [W/(m·K)]: EN 12524; 2.3 at −10 °C. Johansen 1975 takes the same for frozen ground. */
export const iceConductivity = 2.2;

/** Conductivity of the water in the pores of cold ground and media [W/(m·K)]: Johansen 1975; water at 6 °C (IAPWS SR6-08). */
export const poreWaterConductivity = 0.57;
