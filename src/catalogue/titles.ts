/**
 * Titles of works that the sources name by their place alone: journal, volume and pages, or number and year of a standard. A title
 * of which there is any doubt is not here.
 */

/** Seen: in reference lists, in catalogues of libraries, or in open code that cites the work. */
const SEEN: Readonly<Record<string, string>> = {
  'Acta Horticulturae 481:331-340': 'A universal algorithm for calculation of nutrient solutions',
  'Canadian Journal of Forest Research 22:534-540': 'Peat water-content measurement using time domain reflectometry',
  'European Journal of Soil Science 47:357-366':
    'Improving the calibration of dielectric TDR soil moisture determination taking into account the solid soil',
  'European Journal of Soil Science 62:505-515':
    'Laboratory calibration of time domain reflectometry to determine moisture content in undisturbed peat samples',
  'HortScience 43:505-508': 'Container height and Douglas fir bark texture affect substrate physical properties',
  'IEEE Transactions on Geoscience and Remote Sensing GE-23:35-46':
    'Microwave dielectric behavior of wet soil, Part II: Dielectric mixing models',
  'Journal of Applied Meteorology 20:1527-1532': 'New equations for computing vapor pressure and enhancement factor',
  'Journal of Hydrology 151:147-157':
    'A laboratory calibration of time domain reflectometry for soil water measurement including effects of bulk density and texture',
  'Journal of Soil Science 43:1-13':
    'Empirical evaluation of the relationship between soil dielectric constant and volumetric water content as the basis for calibrating soil moisture measurements by TDR',
  'Journal of the American Society for Horticultural Science 114:53-56':
    'Hydrology of horticultural substrates: II. Predicting physical properties of media in containers',
  'Journal of the American Society for Horticultural Science 135:563-567':
    'Developing moisture characteristic curves and their descriptive functions at low tensions for soilless substrates',
  'Journal of the Japanese Society for Horticultural Science 66:331-337':
    'Effect of dissolved O2 levels in a nutrient solution on the growth and mineral nutrition of tomato and cucumber seedlings',
  'Nordic Hydrology 32:315-332': 'Calibration of time domain reflectometry for water content in peat soil',
  'Physikalische Zeitschrift 32:255-260':
    'Die Herleitung des logarithmischen Mischungsgesetzes aus allgemeinen Prinzipien der stationären Strömung',
  'Phytopathology 75:333-337':
    'Effects of temperature on Pythium root rot of spinach grown under hydroponic conditions',
  'Soil Science 117:311-314': 'A simple method for determining unsaturated conductivity from moisture retention data',
  'Soil Science 146:63-66': 'Additional solutions for steady-state evaporation from a shallow water table',
  'Soil Science 84:257-264': 'The theory of infiltration: 4. Sorptivity and algebraic infiltration equations',
  'Soil Science Society of America Journal 44:892-898':
    'A closed-form equation for predicting the hydraulic conductivity of unsaturated soils',
  'Suo 47:1-6':
    'Calibration of time domain reflectometry (TDR) for soil moisture measurements in cultivated peat soils',
  'Water Resources Research 16:574-582':
    'Electromagnetic determination of soil water content: Measurements in coaxial transmission lines',
  'Water Resources Research 23:105-114':
    'Development and evaluation of closed-form expressions for hysteretic soil hydraulic properties',
  'Water Resources Research 27:753-762':
    'Analytical solutions for one-dimensional, transient infiltration toward the water table in homogeneous and layered soils',
  'Hydrology and Earth System Sciences 27:895-915':
    'Mixed formulation for an easy and robust numerical computation of sorptivity',
}

/** Well-known works. [not confirmed, source not seen] */
const REMEMBERED: Readonly<Record<string, string>> = {
  'Acta Horticulturae 26:37-44': 'The physical properties of the substrates in horticulture',
  'Agricultural Systems 153:138-147': 'Plant factories; crop transpiration and energy balance',
  'Annals of Statistics 6:461-464': 'Estimating the dimension of a model',
  'Applied Engineering in Agriculture 1:96-99': 'Reference crop evapotranspiration from temperature',
  'Biometrika 76:297-307': 'Regression and time series model selection in small samples',
  'Canadian Geotechnical Journal 31:521-532': 'Equations for the soil-water characteristic curve',
  'Canadian Journal of Remote Sensing 3:76-86': 'Electromagnetic detection of soil moisture: Progress report I',
  'EN 13041:2011':
    'Soil improvers and growing media - Determination of physical properties - Dry bulk density, air volume, water volume, shrinkage value and total pore space',
  'Environmental Monitoring and Assessment 96:119-128':
    'Temperature-electrical conductivity relation of water for environmental monitoring and geophysical data inversion',
  'Geophysical Research Letters 44:3682-3690': 'Global characterization of surface soil moisture drydowns',
  'HortScience 18:818-822':
    'Photometric, radiometric, and quantum light units of measure: A review of procedures for interconversion',
  'IASH Publication 45:114-121': 'The form of the instantaneous unit hydrograph',
  'IEEE Transactions on Antennas and Propagation 25:104-111':
    'An improved model for the dielectric constant of sea water at microwave frequencies',
  'IEEE Transactions on Geoscience and Remote Sensing GE-18:288-295':
    'An empirical model for the complex dielectric permittivity of soils as a function of water content',
  'ISO 11461:2001':
    'Soil quality - Determination of soil water content as a volume fraction using coring sleeves - Gravimetric method',
  'ISO 11465:1993': 'Soil quality - Determination of dry matter and water content on a mass basis - Gravimetric method',
  'ISO 17892-1:2014':
    'Geotechnical investigation and testing - Laboratory testing of soil - Part 1: Determination of water content',
  'ISO 8601-1:2019': 'Date and time - Representations for information interchange - Part 1: Basic rules',
  'International Journal of Infrared and Millimeter Waves 12:659-675':
    'A model for the complex permittivity of water at frequencies below 1 THz',
  'JCGM 100:2008': 'Evaluation of measurement data - Guide to the expression of uncertainty in measurement',
  'JCGM 101:2008':
    'Evaluation of measurement data - Supplement 1 to the "Guide to the expression of uncertainty in measurement" - Propagation of distributions using a Monte Carlo method',
  'Japanese Journal of Botany 14:22-52':
    'Über den Lichtfaktor in den Pflanzengesellschaften und seine Bedeutung für die Stoffproduktion',
  'Journal of Agricultural Science 4:1-24': 'Studies on soil physics, Part I: The flow of air and water through soils',
  'Journal of Chemical and Engineering Data 20:97-105':
    'Density, thermal expansivity, and compressibility of liquid water from 0° to 150°C: Correlations and tables for atmospheric pressure and saturation reviewed and expressed on 1968 temperature scale',
  'Journal of Chemical and Engineering Data 34:371-374':
    'Complex permittivity of water as a function of frequency and temperature',
  'Journal of Environmental Horticulture 5:180-182':
    'Effects of container geometry and media physical properties on air and water volumes in containers',
  'Journal of Hydraulic Engineering 109:62-70': 'Green-Ampt infiltration parameters from soils data',
  'Journal of Hydrology 10:282-290':
    'River flow forecasting through conceptual models, Part I: A discussion of principles',
  'Journal of Hydrology 88:319-328': 'A method of measuring soil moisture by time-domain reflectometry',
  'Journal of Hydrometeorology 11:832-840':
    'Performance metrics for soil moisture retrievals and application requirements',
  'Journal of Physical and Chemical Reference Data 26:1125-1166':
    'A formulation for the static permittivity of water and steam at temperatures from 238 K to 873 K at pressures up to 1200 MPa, including derivatives and Debye-Hückel coefficients',
  'Journal of Physical and Chemical Reference Data 31:387-535':
    'The IAPWS formulation 1995 for the thermodynamic properties of ordinary water substance for general and scientific use',
  'Journal of Research of the National Bureau of Standards 56:1-8': 'Dielectric constant of water from 0° to 100° C',
  'Journal of Research of the National Institute of Standards and Technology 97:335-340':
    'ITS-90 density of water formulation for volumetric standards calibration',
  'Journal of the American Society for Horticultural Science 114:48-52':
    'Hydrology of horticultural substrates: I. Mathematical models for moisture characteristics of horticultural container media',
  'Journal of the American Statistical Association 88:1273-1283': 'Alternatives to the median absolute deviation',
  'Journal of the American Statistical Association 90:773-795': 'Bayes factors',
  'Journal of the Society for Industrial and Applied Mathematics 11:431-441':
    'An algorithm for least-squares estimation of nonlinear parameters',
  'Limnology and Oceanography 29:620-632':
    'The concentration and isotopic fractionation of oxygen dissolved in freshwater and seawater in equilibrium with the atmosphere',
  'Metrologia 38:301-309':
    'Recommended table for the density of water between 0 °C and 40 °C based on recent experimental reports',
  'Monthly Weather Review 100:81-92':
    'On the assessment of surface heat flux and evaporation using large-scale parameters',
  'Physikalische Zeitschrift 28:277-298': 'Zur Theorie der Elektrolyte. II',
  'Proceedings of the IEEE 62:93-98': 'High dielectric constant microwave probes for sensing soil moisture',
  'Pure and Applied Chemistry 73:1783-1793':
    'Molality-based primary standards of electrolytic conductivity (IUPAC Technical Report)',
  'SIAM Journal on Scientific and Statistical Computing 5:300-304':
    'A method for constructing local monotone piecewise cubic interpolants',
  'Soil Science 147:378-384': 'The spatial sensitivity of time-domain reflectometry',
  'Soil Science 85:228-232':
    'Some steady-state solutions of the unsaturated moisture flow equation with application to evaporation from a water table',
  'Soil Science Society of America Journal 40:651-655':
    'Effects of liquid-phase electrical conductivity, water content, and surface conductivity on bulk soil electrical conductivity',
  'Soil Science Society of America Journal 41:285-294':
    'A comparison of numerical simulation models for one-dimensional infiltration',
  'Soil Science Society of America Journal 59:38-43':
    'Temperature-dependent measurement errors in time domain reflectometry determinations of soil water',
  'Soil Science Society of America Journal 61:1576-1585':
    'Real-time soil water dynamics using multisensor capacitance probes: Laboratory calibration',
  'Soil Science Society of America Journal 64:1922-1925': 'A pore water conductivity sensor',
  'Soil Science Society of America Journal 70:1569-1578':
    'Soil water characteristic estimates by texture and organic matter for hydrologic solutions',
  'Soil Science Society of America Proceedings 39:415-418':
    'On solving the flow equation in unsaturated soils by optimization: Horizontal infiltration',
  'Soil Technology 11:205-217': 'TDR calibration of organic forest floor media',
  'Transactions of the AIME 146:54-62':
    'The electrical resistivity log as an aid in determining some reservoir characteristics',
  'Transactions of the ASAE 17:429-432': 'Drip irrigation design based on uniformity',
  'Transactions of the ASAE 17:678-684': 'Trickle irrigation design parameters',
  'Transactions of the Third International Congress of Soil Science 2:37-48': 'The pF of the water in soil',
  'Vadose Zone Journal 5:121-124': 'Closed-form expression for the multi-modal unsaturated conductivity function',
  'Water Resources Research 24:945-952':
    'Determination of electrical conductivity using time domain reflectometry: Soil and water experiments in coaxial lines',
  'Water Resources Research 26:2267-2273':
    'Calibration of time domain reflectometry for water content measurement using a composite dielectric approach',
  'Water Resources Research 27:2771-2777':
    'Theoretical prediction of electrical conductivity in saturated and unsaturated soil',
  'Water Resources Research 27:857-864':
    'Automatic, real-time monitoring of soil moisture in a remote field area with time domain reflectometry',
  'Water Resources Research 30:211-223':
    'Hydraulic conductivity estimation for soils with heterogeneous pore structure',
  'Water Resources Research 31:2401-2409': 'Noninvasive soil water content measurement using electromagnetic induction',
  'Water Resources Research 32:2697-2703': 'Lognormal distribution model for unsaturated soil hydraulic properties',
  'Water Resources Research 9:384-394': 'Modeling infiltration during a steady rain',
  'Zeitschrift für Meteorologie 40:340-344':
    'Important new values of the physical constants of 1986, vapour pressure formulations based on the ITS-90, and psychrometer formulae',
}

/** Every place of which the title is known. */
export function titledPlaces(): readonly string[] {
  return [...Object.keys(SEEN), ...Object.keys(REMEMBERED)]
}

/** The title of what stands at a place; empty where it is not known. */
export function titleAt(place: string): string {
  const list = Object.hasOwn(SEEN, place) ? SEEN : REMEMBERED
  return Object.hasOwn(list, place) ? list[place]! : ''
}
